"""The verbs of orders, each once, and behind a colon what else is known of it. Ordinary English (common practice, no source)."""

# A noun or adjective too; done by hands to a pot, a bar or a tool; puts what follows into what is made; stirs it in; work on what is made.
NOUN_TOO, BY_HAND, PUTS_IN, STIRS_IN, MAKES = "nhpsm"
_TABLE = """
    add:hpsm apply arrange ask attach avoid bag:n bake:n balance:n beat:psm begin bend:n blend:hpsm bless blot blow boil:m bottle:n
    break:nh breathe bring:p brush:n build burn:n bury buy calm cap:n carry:h check chill:n choose chop chuck clamp:n clean:nh clear:n
    clip:n close coat:n collect:n combine:ps come cook:nhm cool:n count:n cover:nh crumble:h crush cure cut:nhpm dab dampen decant
    decorate defrost dig dilute dip:n disinfect dissolve:hpsm divide do dose:n dot drain:nh drape draw:n dress:n drink:n drip:nps drizzle
    drop:nps dry:n dump dust:n eat empty:nh enjoy ensure eyeball feed:n feel fetch fill:nhm filter:n find finish:n fit:n flush foam:n
    fold:hps follow freeze froth:n funnel:n gargle gather get gift:n give go grate:hp grease:n grind:n guess hammer hand:n handle hang
    heap:n heat:nhpsm help hide hold:n immerse increase infuse inhale insert invert join keep knead:hp knock label:n ladle:nh lather:n
    lay:n lean leave let lick lift:nh light:n line:n lock look:n loosen:nh lower:n make mark:n mask:n massage:n measure:npm melt:nhpsm
    microwave mist:n mix:nhpsm moisten mold:nh mop mould:nh move:nh nibble note:n open:n pack:n paint:n pass paste:n pat:n peel:h pick:n
    pierce pile:n place:np plug:n polish:n pop:n pour:hpsm prepare press:nhp prick pull pulse:n pump:nps push put:pm raise reach read
    record:n refill reheat:h remember remove repeat replace rest:n rinse:h roll:n rotate rub:np run:n sanitise sanitize save scatter:p
    scent:n scoop:hm scrape:h screw scrub:n seal:n see:n sell send separate:n serve set:nh shake:np shape:n sharpen shut sieve:p sift:p
    simmer sip sit skip slice:nh slide slosh smell:n smooth:n sniff soak:n soften spin:n splash:n split:n spoon:nhps spray:n spread:n
    spritz sprinkle:pm squeeze:hps squirt stand:n start:n stay steam:n steep sterilise sterilize stick:n stir:hpsm stop:n store:n strain:h
    stretch:n substitute suck suspend swab swallow swap sweep swill swirl swish switch take:p tap:n tare taste:n tear:n tell test:n thaw
    thicken thin:nh throw tie:n tilt tip:hpsm tongue top:n top-up touch:n transfer treat:n trickle trim:n try:n tuck turn:nh twist:n undo
    unmold:h unmould:h unplug unscrew unwrap use:np wait:n walk:n warm:nhpsm wash:nh watch:n wear:n weigh:hpm wet:np whip:n whisk:nhpsm
    wipe:h wrap:n write zap
"""
_MARKS = {verb: marks for verb, _, marks in (entry.partition(":") for entry in _TABLE.split())}
VERBS = "|".join(_MARKS)


def verbs_that(mark: str) -> tuple[str, ...]:
    """Return the verbs that bear a mark."""
    return tuple(verb for verb, marks in _MARKS.items() if mark in marks)
