"""Every address of the recipe box: how it is asked for, and what its owner gets."""

BOX_PAGES = {
    "recipes": ("get", 200),
    "recipe-new": ("get", 200),
    "recipe-import": ("get", 200),
    "recipe-lines": ("post", 200),
    "recipe-starters-take": ("post", 302),
    "recipe-starter": ("get", 200),
}
"""For whoever is signed in, each with a box of their own."""

RECIPE_PAGES = {
    "recipe": ("get", 200),
    "recipe-edit": ("get", 200),
    "recipe-copy": ("post", 302),
    "recipe-delete": ("post", 302),
    "recipe-share": ("post", 200),
    "recipe-share-end": ("post", 302),
    "recipe-file": ("get", 200),
    "recipe-jsonld": ("get", 200),
    "recipe-versions": ("get", 200),
    "recipe-version": ("get", 200),
    "recipe-version-back": ("post", 302),
    "recipe-into-event": ("get", 200),
    "recipe-restore": ("post", 404),
}
"""Of one recipe, for its owner alone; one that was not thrown away cannot be had back."""

SHARED_PAGES = {"recipe-shared": "get", "recipe-shared-take": "post"}
"""Behind a link."""
