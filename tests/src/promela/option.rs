//! One deed as one option of the model's loop: what it changes, what follows, what lapses, and which dangers it meets.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use panside_procedure::format::Danger;

use super::says::{At, HANDS, Hands, LEAVING, Moving, all, any, excused, not, signed, value_of};
use super::{OBSERVED_ONCE, Runs, Writer, over};

/// Says within a step that something has changed, so that one more pass is made.
pub const MORE: &str = "more";
/// Says within a step that a condition has changed.
pub const TOUCHED: &str = "touched";

/// What a variable was before the step.
pub fn kept(name: &str) -> String {
    format!("kept_{name}")
}

/// Says within a step that a danger was met.
pub fn met(at: usize) -> String {
    format!("met_{at}")
}

/// One assignment, perhaps under a condition.
#[derive(Debug, Clone)]
pub struct Line {
    writes: Vec<String>,
    text: String,
    /// For a plain assignment: what says that it changes something.
    changes: Option<String>,
}

impl Line {
    pub fn new(writes: &[&str], text: String) -> Line {
        Line { writes: writes.iter().map(|&name| name.to_owned()).collect(), text, changes: None }
    }

    pub fn set(name: String, value: usize) -> Line {
        let changes = Some(format!("({name} != {value})"));
        Line { text: format!("{name} = {value}"), changes, writes: vec![name] }
    }

    pub fn only_if(self, condition: &str) -> Line {
        let text = match condition {
            "true" => self.text,
            "false" => "skip".to_owned(),
            _ => format!("if :: {condition} -> {} :: else fi", self.text),
        };
        Line { text, changes: None, ..self }
    }
}

/// Something that can be done, as far as it is not the same for all.
pub struct Deed<'a> {
    pub title: String,
    pub guard: Vec<String>,
    /// What it changes at first.
    pub does: Vec<Line>,
    /// What must hold when all has settled; else nothing is done.
    pub only_if: Option<String>,
    /// What it changes at last.
    pub then: Vec<Line>,
    pub during: Hands<'a>,
    pub after: Hands<'a>,
    pub moving: Option<&'a str>,
    pub begins: bool,
    /// Nobody may go into a danger of doing by it, excused or not.
    pub strict: bool,
    pub observes: bool,
    /// It ends all: every variable gets the same value.
    pub clears: bool,
    /// It leads to a start, which is judged as it is.
    pub starts: bool,
    /// The job ends by it.
    pub leaves: bool,
}

impl<'a> Deed<'a> {
    pub fn new(title: String, guard: Vec<String>) -> Deed<'a> {
        Deed {
            title,
            guard,
            does: Vec::new(),
            only_if: None,
            then: Vec::new(),
            during: Hands::Anybody,
            after: Hands::Anybody,
            moving: None,
            begins: false,
            strict: false,
            observes: false,
            clears: false,
            starts: false,
            leaves: false,
        }
    }
}

/// What follows and what lapses after a change, by their places in the checklist.
struct Settling {
    follows: BTreeSet<usize>,
    gates: BTreeSet<usize>,
    signs: BTreeSet<usize>,
    /// Everything that may be written, the first changes with it.
    writes: BTreeSet<String>,
}

/// A danger that a deed may meet, and what it is at each moment.
struct Judged<'a> {
    at: usize,
    danger: &'a Danger,
    doing: bool,
    before: String,
    during: String,
    after: String,
}

impl<'a> Writer<'a> {
    /// The text of a deed's option.
    pub fn option(&self, deed: &Deed<'a>) -> String {
        let guard = all(deed.guard.iter().cloned());
        let mut text = format!("  /* {} */\n  :: d_step {{ {guard} ->\n", deed.title);
        if deed.clears {
            let judged = self.judged(deed, &self.settling(&BTreeSet::new()));
            for one in &judged {
                line(&mut text, 4, &format!("{} = {};", met(one.at), one.before));
            }
            self.tell(deed, &judged, false, &mut text);
            for (name, ..) in self.variables() {
                let value = if name == "over" { over::STOPPED } else { 0 };
                line(&mut text, 4, &format!("{name} = {value};"));
            }
        } else if guard != "false" {
            self.body(deed, &mut text);
        }
        // A step needs a statement after its guard.
        text.push_str("    skip }\n");
        text
    }

    fn body(&self, deed: &Deed<'a>, text: &mut String) {
        let first: BTreeSet<String> = deed.does.iter().flat_map(|line| line.writes.iter().cloned()).collect();
        let settling = self.settling(&first);
        let judged = self.judged(deed, &settling);
        let asks_touched =
            !(deed.starts || deed.begins || deed.moving.is_some()) && judged.iter().any(|one| one.doing);
        let only_if = deed.only_if.as_deref().unwrap_or("true");
        if only_if != "true" {
            for name in settling.writes.iter().filter(|name| *name != HANDS) {
                line(text, 4, &format!("{} = {name};", kept(name)));
            }
        }
        if asks_touched {
            line(text, 4, &format!("{TOUCHED} = 0;"));
        }
        if deed.moving.is_some() {
            let noted = judged.iter().flat_map(|one| self.says.noted(&one.danger.when));
            for (name, now) in noted.collect::<BTreeMap<_, _>>() {
                line(text, 4, &format!("{name} = {now};"));
            }
        }
        for one in &judged {
            line(text, 4, &format!("{} = {};", met(one.at), one.before));
        }
        for one in &deed.does {
            self.change(one, asks_touched, text);
        }
        judge(&judged, |one| &one.during, text);
        self.follow(&settling, &judged, asks_touched, text);
        self.lapse(&settling, text);
        if only_if != "true" {
            line(text, 4, &format!("if :: {} ->", not(only_if)));
            for name in settling.writes.iter().filter(|name| *name != HANDS) {
                line(text, 6, &format!("{name} = {};", kept(name)));
            }
            let refused = if deed.starts { "no start" } else { "refused" };
            line(text, 6, &format!("printf(\"{refused}\\n\")"));
            line(text, 4, ":: else ->");
        }
        for one in &deed.then {
            self.change(one, false, text);
        }
        judge(&judged, |one| &one.after, text);
        self.tell(deed, &judged, asks_touched, text);
        self.excuse(deed, &settling, text);
        if only_if != "true" {
            line(text, 4, "skip fi;");
        }
    }

    /// Everything that changes, or may change, when these variables do.
    pub fn may_change(&self, first: BTreeSet<String>) -> BTreeSet<String> {
        self.settling(&first).writes
    }

    /// What can follow and lapse after these variables were written. In a job at rest everything else stays as it is;
    /// a follow that gives a gate a class which lapses again never comes to rest, and then all is looked at.
    fn settling(&self, first: &BTreeSet<String>) -> Settling {
        let checklist = self.checklist;
        let holds =
            |id: &String| checklist.gates.iter().any(|gate| gate.id == *id && gate.holds_while.is_some());
        let restless = checklist
            .follows
            .iter()
            .any(|follow| follow.sets.iter().any(|(gate, class)| class != "unknown" && holds(gate)));
        let mut settling = Settling {
            follows: BTreeSet::new(),
            gates: BTreeSet::new(),
            signs: BTreeSet::new(),
            writes: first.clone(),
        };
        loop {
            let before =
                settling.writes.len() + settling.follows.len() + settling.gates.len() + settling.signs.len();
            for (at, follow) in checklist.follows.iter().enumerate() {
                let written: Vec<String> =
                    follow.makes.keys().chain(follow.sets.keys()).map(|id| value_of(id)).collect();
                let depends = self.meets(&follow.when, &settling.writes)
                    || written.iter().any(|name| settling.writes.contains(name));
                if restless || depends {
                    settling.follows.insert(at);
                    settling.writes.extend(written);
                }
            }
            for (at, gate) in checklist.gates.iter().enumerate() {
                let Some(holds) = &gate.holds_while else { continue };
                let name = value_of(&gate.id);
                if restless || settling.writes.contains(&name) || self.meets(holds, &settling.writes) {
                    settling.gates.insert(at);
                    settling.writes.insert(name);
                }
            }
            for (at, sign) in checklist.sign_offs.iter().enumerate() {
                let name = signed(&sign.id);
                if restless
                    || settling.writes.contains(&name)
                    || self.meets(&sign.holds_while, &settling.writes)
                {
                    settling.signs.insert(at);
                    settling.writes.insert(name);
                }
            }
            let after =
                settling.writes.len() + settling.follows.len() + settling.gates.len() + settling.signs.len();
            if after == before {
                return settling;
            }
        }
    }

    fn meets(&self, predicate: &str, writes: &BTreeSet<String>) -> bool {
        !self.says.reads(predicate).is_disjoint(writes)
    }

    fn is_matter(&self, name: &str) -> bool {
        self.checklist.conditions.iter().any(|one| value_of(&one.id) == name)
    }

    fn change(&self, one: &Line, notes_touch: bool, text: &mut String) {
        if notes_touch && one.writes.iter().any(|name| self.is_matter(name)) {
            let changes = one.changes.as_deref().unwrap_or("1");
            line(text, 4, &format!("{TOUCHED} = {TOUCHED} || {changes};"));
        }
        line(text, 4, &format!("{};", one.text));
    }

    /// Every follow that holds, once, in file order, until nothing changes.
    fn follow(&self, settling: &Settling, judged: &[Judged<'_>], notes_touch: bool, text: &mut String) {
        if settling.follows.is_empty() {
            return;
        }
        line(text, 4, &format!("{MORE} = 1;\n    do :: {MORE} -> {MORE} = 0;"));
        for &at in &settling.follows {
            let follow = &self.checklist.follows[at];
            let lines: Vec<Line> =
                [&follow.makes, &follow.sets].into_iter().flat_map(|values| self.assign(values)).collect();
            let changes = any(lines.iter().filter_map(|one| one.changes.clone()));
            line(text, 6, &format!("if :: {} -> {MORE} = 1;", all([self.says.rule(&follow.when), changes])));
            for one in &lines {
                self.change(one, notes_touch, text);
            }
            judge(judged, |one| &one.during, text);
            line(text, 6, "skip :: else fi;");
        }
        line(text, 4, ":: else -> break od;");
    }

    /// Every gate and sign-off whose ground is gone, until nothing changes.
    fn lapse(&self, settling: &Settling, text: &mut String) {
        let gates = settling.gates.iter().map(|&at| &self.checklist.gates[at]);
        let gates = gates.filter_map(|gate| Some((value_of(&gate.id), gate.holds_while.as_ref()?)));
        let signs = settling.signs.iter().map(|&at| &self.checklist.sign_offs[at]);
        let signs = signs.map(|sign| (signed(&sign.id), &sign.holds_while));
        let lapses: Vec<(String, String)> = gates
            .chain(signs)
            .map(|(name, holds)| (name, not(&self.says.rule(holds))))
            .filter(|(_, gone)| gone != "false")
            .collect();
        if lapses.is_empty() {
            return;
        }
        line(text, 4, &format!("{MORE} = 1;\n    do :: {MORE} -> {MORE} = 0;"));
        for (name, gone) in lapses {
            let when = all([format!("({name} != 0)"), gone]);
            line(text, 6, &format!("if :: {when} -> {name} = 0; {MORE} = 1 :: else fi;"));
        }
        line(text, 4, ":: else -> break od;");
    }

    /// The dangers a deed may meet. Those of the vehicle only where it changes what they read: what held before was
    /// met before. Those of what is done where it begins work or may change a condition.
    fn judged(&self, deed: &Deed<'a>, settling: &Settling) -> Vec<Judged<'a>> {
        if deed.observes {
            return Vec::new();
        }
        let changes_matter = settling.writes.iter().any(|name| self.is_matter(name));
        let after_action = deed.moving.map_or(Moving::Nothing, Moving::After);
        let mut found = Vec::new();
        for (number, danger) in self.checklist.dangers.iter().enumerate() {
            let reads = self.says.reads(&danger.when);
            let doing = reads.contains(HANDS);
            let leaves = deed.leaves && reads.contains(LEAVING);
            let at_first = match deed.moving {
                Some(made) if doing => Some(Moving::Before(made)),
                _ => leaves.then_some(Moving::Leaving),
            };
            let may_meet = deed.starts
                || leaves
                || if doing { deed.begins || changes_matter } else { !reads.is_disjoint(&settling.writes) };
            let never = || "false".to_owned();
            let danger_at = |hands, moving| self.says.danger(&danger.when, At { hands, moving });
            let before = at_first.map_or_else(never, |moving| danger_at(deed.during, moving));
            let during = if deed.starts { never() } else { danger_at(deed.during, after_action) };
            let after = danger_at(deed.after, after_action);
            if may_meet && [&before, &during, &after].iter().any(|text| *text != "false") {
                found.push(Judged { at: number, danger, doing, before, during, after });
            }
        }
        found
    }

    /// Tells the dangers met that are not excused.
    fn tell(&self, deed: &Deed<'_>, judged: &[Judged<'_>], asks_touched: bool, text: &mut String) {
        for one in judged {
            let touched = if one.doing && asks_touched { TOUCHED } else { "true" };
            let counts = if self.runs == Runs::OneObservation
                && !(one.doing && (deed.strict || deed.moving.is_some()))
            {
                format!("({} == 0)", excused(one.at))
            } else {
                "true".to_owned()
            };
            let when = all([met(one.at), touched.to_owned(), counts]);
            line(text, 4, &format!("if :: {when} -> printf(\"danger {}\\n\") :: else fi;", one.danger.id));
        }
    }

    /// What holds since an observation is excused while it lasts.
    fn excuse(&self, deed: &Deed<'_>, settling: &Settling, text: &mut String) {
        if self.runs != Runs::OneObservation || deed.starts {
            return;
        }
        let last = deed.then.iter().flat_map(|line| line.writes.iter().cloned());
        let writes: BTreeSet<String> = settling.writes.iter().cloned().chain(last).collect();
        let mut lines = String::new();
        for (number, danger) in self.checklist.dangers.iter().enumerate() {
            let name = excused(number);
            let still = self.says.danger(&danger.when, At { hands: deed.after, moving: Moving::Nothing });
            if deed.observes {
                line(&mut lines, 6, &format!("{name} = {still};"));
            } else if self.meets(&danger.when, &writes) {
                line(&mut lines, 6, &format!("{name} = {name} && {still};"));
            }
        }
        if !lines.is_empty() {
            line(text, 4, &format!("if :: {OBSERVED_ONCE} ->\n{lines}      skip :: else fi;"));
        }
    }
}

fn judge<'j, 'a: 'j>(
    judged: &'j [Judged<'a>],
    moment: impl Fn(&'j Judged<'a>) -> &'j String,
    text: &mut String,
) {
    for one in judged {
        let now = moment(one);
        if now != "false" {
            line(text, 6, &format!("{0} = {0} || {now};", met(one.at)));
        }
    }
}

fn line(text: &mut String, indent: usize, what: &str) {
    // Writing into a String can't fail.
    let _ = writeln!(text, "{:indent$}{}", "", what.trim_start());
}
