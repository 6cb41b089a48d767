"""Plain forms whose clean methods return what services take."""
