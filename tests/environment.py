"""What every test process starts from: no setting of the person who runs the tests reaches the code under test.

Loaded by pytest before Django reads its settings (see `addopts`).
"""

import os
import tempfile

for name in [name for name in os.environ if name.startswith("COOKOUT_") and not name.startswith("COOKOUT_TESTS_")]:
    del os.environ[name]

os.environ["COOKOUT_SECRET_KEY"] = "only-for-tests-" + "x" * 40
os.environ["COOKOUT_VAR_DIR"] = tempfile.mkdtemp(prefix="cookout-tests-")
