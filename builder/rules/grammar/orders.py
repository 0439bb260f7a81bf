"""Whether words order something: they begin with a verb, or say what people do."""

import re
from functools import lru_cache

VERBS = (
    "add|apply|arrange|ask|attach|avoid|bag|bake|balance|beat|begin|bend|blend|bless|blot|blow|boil|bottle|break|"
    "breathe|bring|brush|build|burn|bury|buy|calm|cap|carry|check|chill|choose|chop|chuck|clamp|clean|clear|clip|close|coat|"
    "collect|combine|come|cook|cool|count|cover|crumble|crush|cure|cut|dab|dampen|decant|decorate|defrost|dig|dilute|dip|"
    "disinfect|dissolve|divide|do|dose|dot|drain|drape|draw|dress|drink|drip|drizzle|drop|dry|dump|dust|"
    "eat|empty|enjoy|ensure|eyeball|feed|feel|fetch|fill|filter|find|finish|fit|flush|foam|fold|follow|freeze|"
    "froth|funnel|gargle|gather|get|gift|give|go|grate|grease|grind|guess|hammer|hand|handle|hang|heap|"
    "heat|help|hide|hold|immerse|increase|infuse|inhale|insert|invert|join|keep|knead|knock|label|ladle|lather|lay|lean|leave|"
    "let|lick|lift|light|line|lock|look|loosen|lower|make|mark|mask|massage|measure|melt|microwave|mist|mix|"
    "moisten|mold|mop|mould|move|nibble|note|open|pack|paint|pass|paste|pat|peel|pick|pierce|pile|place|plug|polish|pop|"
    "pour|prepare|press|prick|pull|pulse|pump|push|put|raise|reach|read|record|refill|reheat|remember|remove|"
    "repeat|replace|rest|rinse|roll|rotate|rub|run|sanitise|sanitize|save|scatter|scent|scoop|scrape|screw|"
    "scrub|seal|see|sell|send|separate|serve|set|shake|shape|sharpen|shut|sieve|sift|simmer|sip|sit|skip|"
    "slice|slide|slosh|smell|smooth|sniff|soak|soften|spin|splash|split|spoon|spray|spread|spritz|sprinkle|squeeze|squirt|"
    "stand|start|stay|steam|steep|sterilise|sterilize|stick|stir|stop|store|strain|stretch|substitute|suck|suspend|"
    "swab|swallow|swap|sweep|swill|swirl|swish|switch|take|tap|tare|taste|tear|tell|test|thaw|thicken|thin|throw|tie|tilt|"
    "tip|tongue|top|top-up|touch|transfer|treat|trickle|trim|try|tuck|turn|twist|undo|unmold|unmould|"
    "unplug|unscrew|unwrap|use|wait|walk|warm|wash|watch|wear|weigh|wet|whip|whisk|wipe|wrap|write|zap"
)
# Each word in one way and at most eight of them: what nobody writes takes no longer to read.
ADVERB = (
    r"(?:(?:then|now|next|first|second|third|and|or|also|just|please|always|once|again|well|so|instead|afterwards?|later|meanwhile|"
    r"together|\w+ly)\b[\s,]*){0,8}"
)
ORDER = rf"{ADVERB}(?:{VERBS})\b(?!\s+(?:is|are|was|of|can|may)\b)"
PEOPLE = (
    rf"{ADVERB}(?:you|we|students?|the students?|guests?|everyone|everybody|each (?:student|guest|pair|group|"
    rf"person)|the teacher|teachers?|an assistant|(?:the )?children|(?:the )?kids|"
    r"one partner|pairs|groups|they|let|let's|have (?:an?|the|each|every)|i)\b"
)
_BEGINS = re.compile(rf"[\W_]*(?:{ORDER}|{PEOPLE})", re.IGNORECASE)
_BEGINS_ORDER = re.compile(rf"[\W_]*{ORDER}", re.IGNORECASE)
_SO = re.compile(rf",\s*so\s+{ORDER}", re.IGNORECASE)
_LEADS_IN = re.compile(
    r"[\W_]*(?:when|while|if|once|as|after|before|to|for|in|with|without|at|on|now|then|until|during|not (?:only|too)|"
    r"don['’]t|do not|never|no)\b",
    re.IGNORECASE,
)
# It begins where its spaces do: from within them none is looked for.
NEW_ORDER = re.compile(
    rf",\s*+(?=(?:(?:but|just|then|and|instead|simply)\s*)?{ORDER})|(?:,|(?<!\s))\s++\b(?:but|until|unless)\b", re.IGNORECASE
)


def begins_order(words: str) -> bool:
    """Tell whether words begin with the verb of an order."""
    return bool(_BEGINS_ORDER.match(words))


@lru_cache(4096)
def orders_something(words: str) -> bool:
    """Tell whether words begin with an order or say what people do, be it after words that lead in to it, or a reason."""
    if _SO.search(words):
        return True
    first, *rest = re.split(r"[,;:]\s", words)
    return bool(_BEGINS.match(first)) or (bool(_LEADS_IN.match(first)) and any(map(_BEGINS.match, rest)))
