"""Pages for people: thin views over services and selectors."""
