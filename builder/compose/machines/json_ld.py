"""JSON-LD as the text of a script element.

Decided: signs that end a script or begin a comment in HTML are written as escapes of JSON. Why: a title may hold `</script>`.
"""

import json
from typing import Any

SCHEMA = "https://schema.org"
_ESCAPES = {sign: f"\\u{ord(sign):04x}" for sign in "<>&\u2028\u2029"}

Node = dict[str, Any]


def as_script(nodes: list[Node]) -> str:
    """Write nodes as the text of a script element; empty where there are none."""
    if not nodes:
        return ""
    text = json.dumps({"@context": SCHEMA, "@graph": nodes}, ensure_ascii=False, separators=(",", ":"))
    return "".join(_ESCAPES.get(sign, sign) for sign in text)
