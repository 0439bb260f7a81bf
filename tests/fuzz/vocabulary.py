"""What stands in the wrong place: numbers, amounts, dates, YAML and prose as nobody should write them, or as somebody once will."""

NUMBERS = (
    "0", "-1", "-0", "1e9", "1e400", "1e-400", "NaN", ".nan", ".inf", "-.inf", "Infinity", "99999999999999999999999", "9" * 400,
    "0.0000000000000001", "١٢", "１２", "½", "1½", "1 1/2", "1/0", "0/0", "²", "1,5", "1.000,50", "0x10", "010", "1_000", "+5", "--5",
    "5-", "1..2", "1 to 0", "1-", "-", ".", "1e", "1:30", "100", "101", "0.5", "12", "1000000", "Ⅳ", "٪", "1 000", "1\u00a0000",
    "1\u2009000", "−5",
)  # fmt: skip
UNITS = (
    "", "%", "g", "kg", "mg", "oz", "lb", "fl oz", "cup", "cups", "tsp", "tbsp", "drop", "drops", "mL", "L", "gal", "degC", "degF", "K",
    "°C", "h", "min", "s", "days", "weeks", "months", "years", "parts", "part", "rest", "ppm", "mg/g", "g/mL", "kg/m3", "cm", "mm", "in",
    "pH", "people", "containers", "bars", "EUR", "$", "g of oils", "% of oils", "µg", "㎏", "℅", "‰", "stone", "parsec", "g g", "per",
    "/", "^2", "**2",
)  # fmt: skip
DATES = (
    "2027-02-29", "2027-02-29 10:00", "0000-00-00", "0001-01-01 00:00", "9999-12-31 23:59", "9999-12-31", "10000-01-01", "2027-13-01",
    "27-03-06", "2027-03-06 24:00", "2027-03-06 25:00", "2027-03-06T10:00Z", "2027-03-06 10:00:60", "1900-01-01 00:00", "-2027-03-06",
    "2027-3-6 9:5", "6 March 2027", "2027-W10-6", "2026-12-31 10:00", "2027-01-01", "2027-01-01 00:00", "tomorrow",
    "2027-03-06 10:00 - 12:00", "2027-03-28 02:30",
)  # fmt: skip
VALUES = (
    "", "~", "null", "yes", "no", "true", "[]", "{}", "[[[]]]", "[,]", "{a: {b: {c: 1}}}", "[a, [b, {c: d}]]", "{? a}",
    "!!python/object:os.system x", "!!int 5", "!!binary AAAA", "&a [*a]", "*a", "&a b", "|", ">-", "|9", "'", '"', '"\\x"', '"\\0"',
    '"\\ud800"', "@", "`", "%", "? x", ": ", "- a", "---", "...", "#", "<<", "=", "{{ 7*7 }}", "{% raw %}", "{", "}", "{}", "{water}",
    "{caution: caustic}", "{passage: mix-lye}", "<script>alert(1)</script>", "<b>", "&amp;", "&#0;", "../../etc/passwd", "/etc/passwd",
    "C:\\x", "file:///etc/passwd", "http://192.0.2.1/x", "javascript:alert(1)", "a|b", "a\\", "\\",
)  # fmt: skip
SIGNS = (
    "\u202e", "\u200f", "\u200b", "\u2060", "\ufeff", "e\u0301\u0301\u0301", "\u0301", "\0", "\x07", "\x1b[31m", "\x7f", "\u0085",
    "\u2028", "\u2029", "\t", "\r", "\x0b", "\x0c", "\u00a0", "\u00ad", "\ufffd", "\uffff", "\ufdd0", "\U0001f9fc", "\U000e0001",
    "\U0010ffff", "ß", "İ", "ı", "ﬁ", "Ǆ", "ſ", "K", "Å", "ا", "अ", "ไ", "字", "ⅷ", "“", "’", "«", "‚", "–", "—", "…", "：", "﹪", "（",
)  # fmt: skip
LONG = (
    "x" * 70_000, "word " * 3_000, "olive oil and " * 1_000, "{" * 2_000, "[" * 2_000, "(" * 2_000, "not " * 2_000, "a, " * 2_000,
    "- " * 500, "*" * 2_000, "> " * 500, "# " * 500, "`" * 2_000, "![](" * 500, "[a](" * 500, "\n" * 3_000, "|" * 2_000, "ä" * 5_000,
    "slowly " * 2_000, "then, " * 2_000, "-" * 2_000, "'" * 2_000, " " * 3_000, "pour it and " * 1_000, "if you pour, " * 1_000,
    "never add lye, never add water, " * 200, "& " * 2_000, "e\u0301" * 3_000, "1 " * 3_000, "." * 3_000, "_" * 2_000, "<" * 2_000,
    "9" * 5_000,
)  # fmt: skip
PROSE = (
    "## Pour the water into the lye (students, 5 min)", "## (", "## Part (students)", "## Part (students, -5 min)",
    "## Part (nobody, 5 min)", "# Title", "## Part (teacher, 99999999999 h)",
    "## Part (teacher, students, 5 min, 5 min, class only, class only)", "##", "###### x", "1. Weigh {water} of {water}.", "1. Weigh {",
    "1. }", "{caution: nothing}", "{passage: nothing}", "{passage: {passage: mix-lye}}", "{water: lye water: portion}", "{lye water}",
    "{portion}", "{sodium hydroxide}", "{batch}", "{}", "{ }", "{:}", "---", "***", "- - - - x", "> > > x", "    code", "```", "~~~",
    "| a | b |", "|---|---|", "<div>", "<!--", "<script>", "![x](party.svg)", "![x](../../x.svg)", "![x](http://192.0.2.1/x.png)",
    "![](data:image/png;base64,AAAA)", "[x](javascript:alert(1))", "[x]: y", "[x][x]", "[^1]", "Stir in the water.",
    "Add 5 g of sodium hydroxide.", "Add 12 drops of lavender to each bath.", "It cures eczema.", "Heat to 300 degC.",
    "Heat it to -400 degF, then cool it to 1000 K.", "1) a", "0. a", "999999999999. a", "1. 1. 1. a", "a  ", "\\", "&nbsp;",
    "Leave it for 5 to 3 min.",
)  # fmt: skip
CELLS = (
    "", "name", "date", "age", "allergies", "group", "=1+1", "@x", '"', '""', '"a', "a\nb", ";", "\t", "-1", "0", "1000", "twelve",
    "none", "latex; almonds", "coconut, shea, wheat, nut, bee, milk", "2027-02-29", "9999-12-31", "Émile Ünnamed", "x" * 140_000, "\0",
    "\u202ename", "no scent", "soy" * 50,
)  # fmt: skip
TEMPLATES = (
    "{{ view.nothing }}", "{{", "{% if %}", "{% for x in view %}{{ x }}{% endfor %}", "{% for i in range(10**9) %}x{% endfor %}",
    "{{ ''.__class__.__mro__ }}", "{{ 1/0 }}", "{% include 'nothing.html' %}", "{% include '../../etc/passwd' %}",
    "{% extends 'frames/page.html' %}", "{% block main %}", "{% endblock %}", "{{ view }}", "{{ view.title.upper(1, 2) }}",
    "{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}", "{% set x = view %}{{ x.title }}", "{# Takes: Nothing #}", "{{ lipsum() }}",
    "{{ cycler }}", "{{ view.title|int }}", "{{ view.title|nothing }}", "{% raw %}", "<p>", "</html>", "\ufeff",
    "{{ view.title.encode('x') }}", "{{ view.title % 5 }}", "{{ [1][5] }}", "{{ 'a' * -1 }}", "{% import 'parts/steps.html' as x %}",
    "{{ view['title']['x']['y'] }}", "{{ 10**100000 > 1 }}", "{% include 'frames/page.html' %}", "{% include 'parts/lye.html' %}",
    "{% for x in [1] recursive %}{{ loop([1]) }}{% endfor %}", "{{ 'x' * 10000000000 }}", "{{ 'x'|center(10000000000) }}",
    "{% for i in range(99999) %}{% for j in range(99999) %}x{% endfor %}{% endfor %}", "{{ '%999999999d' % 1 }}",
    "{% set n = namespace(x='a') %}{% for i in range(99) %}{% set n.x = n.x ~ n.x %}{% endfor %}", "{{ lipsum(999999999) }}",
    "{% macro m(n) %}{% if n %}{{ m(n - 1) }}{{ m(n - 1) }}{% endif %}{% endmacro %}{{ m(60) }}", "{{ " + "(" * 2_000,
    "{{ " + "(" * 2_000 + "1" + ")" * 2_000 + " }}", "{% for i in [1] %}" * 30 + "{% endfor %}" * 30, "<p>" * 2_000, "x" * 999_999,
)  # fmt: skip
STYLES = (
    "p { color: red }", "* { display: none }", "p {", "}", "/*", "*/", "'", '"', "\\", "@import 'own.css';", "@import url(screen.css);",
    "@import url(http://192.0.2.1/x.css);", "@media print {", "@font-face { src: url(/etc/passwd) }", "p { color: var(--a) }",
    ":root { --a: var(--b); --b: var(--a) }", "& &{" * 25 + "color:red" + "}" * 25, "p{" * 2_000 + "}" * 2_000,
    "p{color:" + "(" * 3_000 + "}", "div " * 300 + "p {color: #111}", "p:not(" * 500 + "a" + ")" * 500 + "{}", "p{color:#111}" * 3_000,
    "p{font-size:1e400px}", "p{color:rgb(NaN NaN NaN)}", "p{opacity:calc(1/0)}", "p{font:0/0 x}", ":is(", "[x=", "a:has(:has(b)) {}",
    "p::before{content:'\\0'}", "\\0", "p{opacity:..5}", "p{margin:-..px}", "p{color:#12}", "p{zoom:0..0}", "p{font-size:9..pt}",
    "body{columns:9000}", "p{columns:100}",
)  # fmt: skip
DRAWINGS = (
    "<g>" * 500 + "</g>" * 500, "<g>", "</svg>", '<use href="#x"/>', '<g id="x"><use href="#x"/></g>', "&a;", "<script/>", "<style>",
    '<path d="M"/>', '<path d="' + "M0 0L1e400 NaN" * 999 + '"/>', '<text>x</text>', "<!-- ", "<![CDATA[", '<rect width="-1"/>',
    '<image href="/etc/passwd"/>', '<image href="http://192.0.2.1/x"/>', '<svg viewBox="0 0 0 0">', '<svg viewBox="NaN" width="1e999">',
    f'<path d="M0 0{"l1 2" * 400_000}"/>',
)  # fmt: skip
NAMES = (
    "Orchard Bar", "x.y", "ünnamed", "con", "a" * 200, "-", "_", "water", "plain-bar", "..x", "a\nb", "a:b", "a\\b", "caf\udce9",
    "\u202etxt", "a.yaml", "class", "NUL", "a%20b", "index", "site", "print", "one-bar--2027", "x--y",
)  # fmt: skip
