# What is wrong with a checklist, a part or a spec sheet, why there is no plan, and what a proof says.
#
# What is wrong follows the place in which it stands, so it begins small.

## Where something stands in a file

spot = line { $line }, column { $column }
spot-in-file = { $file }, line { $line }, column { $column }
# $spot: spot or spot-in-file; $pointer: the place in the file as a JSON pointer
place = { $spot } ({ $pointer })

## What is wrong with a file, and where

# $place: place; $what: problem-*, predicate-at or part-*
problem-at = { $place }: { $what }
# The same where it stands in the file of a part, whose name begins the place
problem-in-part = in { $place }: { $what }

## Bytes into JSON into the format

problem-too-large = the file has more than { $most } MB, which is the most
problem-not-utf8 = the file is not UTF-8 from byte { $byte } on; save it as UTF-8
# $said: what the JSON decoder said
problem-not-json = this is not JSON: { $said }
problem-format = the format is "{ $found }"; this version of Panside reads "{ $wanted }"
problem-no-format = "format": "{ $wanted }" is missing
problem-key-twice = this key stands twice in one object; keep one
# $known: the fields that there are
problem-no-field = there is no field "{ $field }" here; possible are { $known }
problem-no-field-near = there is no field "{ $field }" here; perhaps "{ $near }" is meant
problem-no-variant = there is no value "{ $value }" here; possible are { $known }
problem-no-variant-near = there is no value "{ $value }" here; perhaps "{ $near }" is meant
problem-missing = "{ $field }" is missing; add it
# $said: what the JSON decoder said
problem-misfit = { $said }
# $field: source or entered_by
problem-empty = "{ $field }" is empty: say where the value comes from and who entered it

## How much there may be

# $what: a word for what is counted; a field of the file where it is none of these
problem-bound = { $what ->
        [steps_of_phase] steps in the phase
        [crew] people in a step at one time
        [changes_of_class] changes of one class
        [first_page] photos on the first page
        [amounts] amounts
        [pieces] pieces
       *[field] { $what }
    }: there are { $is }; { $least } to { $most } are possible
# $begin: how the name begins
problem-long-name = the name "{ $begin }…" has { $length } characters; { $most } are the most, a title can say more
problem-starts = the vehicle can come in in more than { $most } ways; ask for fewer conditions at the start, or for fewer facts
problem-state = the checklist needs more than { $most } bits of state; use fewer steps, dangers, conditions or items
problem-outcomes = the entries of this step can turn out in more than { $most } ways; split the step

## Names, values and labels

problem-name = "{ $name }" cannot be a name; use lower-case letters, digits and _, and none of the predicate words
# $place: a JSON pointer
problem-name-taken = the name "{ $name }" is taken by { $place }; choose another
problem-twice = "{ $name }" stands twice
problem-value-name = "{ $value }" cannot be a value; use lower-case letters, digits and _, not "unknown"
problem-no-value = "{ $value }" is no value of { $name }
problem-no-value-but = "{ $value }" is no value of { $name }; it can be { $choices }
problem-label-empty = the label is empty; say what people read
problem-label-id = "{ $label }" is an id and no label; say what people read, without _
problem-key-label = the key "{ $key }" of the spec sheet has no label; add one to "sheet_keys"
problem-key-without = "{ $key }" is useful; say in "without" what is lost where a sheet does not have it
problem-key-usual = "{ $key }" is not asked of the shop, so "usual" has no use; take it out, or write "asked": "shop"
# $kind: the kind of value as it stands in a sheet's file
problem-key-usual-kind = "{ $key }" is read as a { $kind }; make "usual" one
problem-key-rules = rules hang on "{ $key }", so that every sheet must have it; take "asked" out
problem-key-not-spare = "{ $key }" can't be missing, as entry "{ $entry }" of step "{ $step }" is judged by it; take "asked" out, or write "shop"
problem-key-ends = no entry reads "{ $chart }" as a chart; write the key of a level chart
problem-no-step = no step is called "{ $step }"
problem-no-permit = no permit is called "{ $permit }"
problem-no-sign-off = no sign-off is called "{ $sign }"
problem-no-item = no item is called "{ $item }"
problem-no-condition = "{ $name }" is no condition; gates are assigned by "sets"
problem-no-gate = "{ $name }" is no gate; conditions are assigned by "makes"

## Rules beyond the shape

problem-never-fresh = knowledge that is good for 0 minutes is never good
problem-follows = another follow gives { $name } another value; they could go on for ever
problem-action-idle = a vehicle action must change something
problem-action-alone = { $name } is written by vehicle actions; nothing else may write it
# $steps: how many; never 1
problem-asked-by = { $steps } steps ask for this sign-off; exactly one must
problem-no-earlier-phase = "{ $phase }" is no earlier phase
problem-no-earlier-step = "{ $step }" is no earlier step; a step builds on earlier ones
problem-ring = these steps wait for each other, so none can begin: { $steps }
problem-skip-writes = this step writes { $name }, which a danger reads
problem-skip-moves = this step moves pieces; it cannot be skipped
problem-skip-permit = a permit hangs on this step; it cannot be skipped
problem-danger-doing = a danger that reads gates, sign-offs, steps or items must also say what is being done: doing.zone, doing.touches, doing.tag, moving, moved or leaving
problem-contradict = two entries of this step give { $name } different values at once; let one of them decide
problem-wait-minutes = { $minutes } minutes to wait; 1 to { $most } are possible
problem-wait-for = say what is waited for, like "the exhaust to cool"
problem-wait-since = a wait with "since" lies before the step, where nobody attends; take one of the two out
problem-wait-attended = say with "attended" whether somebody must stay while the time passes
problem-wait-timer = the step's timer runs while somebody is in it, so this wait must be "attended": true
# $item: what the item is called, in the plural where there are several
problem-pieces = { $pieces } pieces; there are { $most } of { $item }
problem-all-of = the spec sheet says how many "{ $item }" there are: write "all" in place of a number
problem-count-twice = "{ $item }" has its count from the spec sheet: leave "count" out
problem-on-decides = "{ $entry }" is not asked for on every vehicle, so this class can only hold the step or do nothing
problem-or-none = only the spec sheet can say that there is no "{ $item }": "or_none" needs "sheet"

## Entries and their classes

problem-entry-twice = the entry "{ $entry }" stands twice in this step
# $kind: the kind of entry as it stands in the file
problem-class-left-out = { $kind ->
        [estimate] an
        [authorization] an
       *[other] a
    } { $kind } can come out as "{ $class }"; say what that does (an empty {"{}"} for nothing)
problem-class-never = { $kind ->
        [estimate] an
        [authorization] an
       *[other] a
    } { $kind } never comes out as "{ $class }"; it can be { $choices }
problem-not-yet-alone = "not_yet" keeps the step begun and changes nothing; remove the rest
problem-must-hold = "{ $class }" must be "not_yet": the step is held until it is corrected
problem-optional-decides = an optional entry cannot decide anything; make it required or take this out
problem-hands-did = only a choice with "hands_did": true may change conditions: it tells what the hands did
problem-all-not-yet = every class is "not_yet", so the step could never be done
problem-optional-sign = a sign-off is never optional; skip the step or take it out
# $entry: as step.entry; $wanted: entry-of-kind or entry-in-unit
problem-no-entry = no entry is called "{ $entry }"; write it as step.entry, { $wanted }
problem-entry-kind = "{ $entry }" must be { $wanted }
entry-of-kind = { $kind ->
        [estimate] an
        [authorization] an
       *[other] a
    } { $kind }
entry-in-unit = a { $kind } in { $unit }
problem-good-holds = "{ $class }" holds the step or ends the job, so it is no good answer
problem-good-none = "{ $class }" is none of the options
problem-good-all = every answer is good; leave "good" out
problem-balance = a balance needs at least one amount drained and one added
problem-choice = a choice needs at least two options
problem-several = there must be at least two options
problem-not-ranked = "{ $class }" is not in "ranked"
problem-rank-idle = no option has the class "{ $class }"
problem-decision = a decision needs at least one entry in "of", one row and two options
problem-decision-of = "{ $name }" is not in "of"
problem-decision-when = each row says in "when" what it is for; only the last may have "otherwise": true in its place
problem-decision-idle = no row comes to "{ $class }", and it may not be decided against the table
# $entry: as step.entry
problem-decision-no-entry = no entry is called "{ $entry }"; write it as step.entry
problem-decision-sign = "{ $entry }" is a sign-off, which is given when the step is done; it decides nothing
problem-decision-later = "{ $entry }" is not entered before this one; move it up
problem-decision-relies = it is decided by an entry of "{ $step }", so add that to "relies_on": voided together
problem-decision-class = "{ $entry }" is never "{ $class }" when this is decided; it can be { $choices }
# $count: how many, or more
problem-decision-size = the entries can be { $count } combinations of classes; at most { $most } are possible
# $combination: what entries are, each as "name: class"; $count: how many combinations no row is for
problem-decision-hole =
    { $count ->
        [one] no row is for { $combination }
       *[other] no row is for { $combination }, which is one of { $count } combinations without a row
    }
# $first, $second: numbers of rows, from 1
problem-decision-overlap = rows { $first } and { $second } come to different classes, and both are for { $combination }
problem-decision-never = this row never speaks: rows before it are for all that it is for

## Predicates

# $what: predicate-* or problem-*; $character: its place in the predicate, from 1
predicate-at = { $what } (character { $character })
# $said: predicate-at, for the place in the term
predicate-in-term = in the term "{ $term }": { $said }
predicate-long = it has more than { $most } characters; give parts of it names in "terms"
predicate-deep = nested deeper than { $most }; give a part a name in "terms" and use the name
predicate-character = "{ $character }" has no place in a predicate; use names, =, !=, in {"{…}"}, and, or, not, parentheses
predicate-joint = "{ $token }" is not expected here; join parts with and / or
# $mark: a parenthesis or brace; $found: predicate-token or predicate-end
predicate-mark = "{ $mark }" is missing before { $found }
predicate-token = "{ $token }"
predicate-end = the end
# $wanted: one of those that follow, from predicate-name to predicate-tag
predicate-not-wanted = { $wanted } is expected here, not "{ $token }"
predicate-wanted-at-end = { $wanted } is missing at the end
predicate-equal = "=" and { $wanted } are expected here
predicate-name = a name
predicate-value = a value
predicate-step = a step
predicate-sign-off = a sign-off
predicate-gate = a gate
predicate-item = an item
predicate-number = a number
predicate-vehicle-action = a vehicle action
predicate-zone = a zone
predicate-part = a part
predicate-tag = a tag
predicate-full-stop = "{ $word }" is not known; after "doing." comes zone, touches or tag, and names have no full stop
predicate-empty = write empty(item) = 0, or != 0
predicate-no-number = "{ $number }" is not a whole number from 0 to 63
predicate-parts = with its terms written out this has more than { $most } parts; say it shorter
predicate-pieces = there are only { $most } of these; compare with 0 to { $most }
predicate-write-value = "{ $name }" has values: write { $name } = value
predicate-no-term = no term, condition, fact or gate is called "{ $name }"
predicate-term-ring = the term "{ $term }" uses itself
predicate-terms-deep = terms stand in each other deeper than { $most }; write some of them out
predicate-no-variable = no condition, fact or gate is called "{ $name }"
predicate-write-unknown = write "not known({ $name })" instead of { $name } = unknown
predicate-unknown-yes = { $name } can be unknown, and "not" or != would take that for a yes; write "known({ $name }) and …" or name the classes that do with { $name } in {"{…}"}
predicate-fact-here = { $name } is no fact; only facts can be read here
predicate-gate-here = { $name } is a gate; only conditions and facts can be read here
predicate-condition-here = { $name } is a condition; "on" reads gates and facts only
predicate-no-gate = no gate is called "{ $name }"
predicate-never-unknown = { $name } is never unknown; known(…) is for gates
# $what: a word of the language of predicates
predicate-tray-not-clear = tray_clear can only be negated in dangers: a piece that the checklist does not know would permit something here; write which item is off with empty(…) != 0
predicate-not-here = { $what } cannot be read here; it can in needs, while, again, done_when, safe_to_leave and dangers
predicate-doing-here = what is being done can only be read in dangers
predicate-no-vehicle-action = no vehicle action is called "{ $action }"
predicate-nowhere = no step has "{ $name }" here, so this can never hold

## The use of parts

part-no-file = there is no part "{ $part }"; it would be the file { $file }
part-together = with this part the files have more than { $most } MB together
part-whole = with its parts it has more than { $most } MB
# $said: what the JSON decoder said
part-use = { $said }; write {"{"}"use": "NAME", "with": {"{…}}"}
part-name = "{ $part }" cannot name a part; use lower-case letters, digits and hyphens
part-again = the part "{ $part }" is used before; it can be there once
part-too-many = more than { $most } parts are used; put some together
part-in-part = a part uses no parts, not even itself; use each of them in the checklist
part-id = this part is called "{ $id }" and its file "{ $file }"; make them alike
part-phases-only = the checklist uses this part among its phases: it must bring phases only
part-steps-only = the checklist uses this part among its steps: it must bring steps only
part-no-setting = there is no setting "{ $name }"; add it to "settings" with what it is for
part-setting-idle = no text here is "${ $name }"; take the setting out
# $meaning: what the setting is for, as its author says it
part-setting-wanted = the part "{ $part }" wants "{ $name }" in "with": { $meaning }
part-no-such-setting = the part "{ $part }" has no setting "{ $name }"
# $meaning: what the term must mean, as the part's author says it
part-term-wanted = the checklist has no term "{ $term }"; add it to its "terms": { $meaning }
part-in-checklist = the checklist has "{ $id }" too, and not the same; keep one of them
part-in-file = { $file } has "{ $id }" too, and not the same; keep one of them

## A checklist's texts in another language

# $found, $wanted: ids of checklists
texts-of-other = these are the texts of checklist "{ $found }", and the checklist is "{ $wanted }"
# $found, $wanted: revisions
texts-of-revision = these are the texts of revision { $found }, and the checklist is revision { $wanted }; see what has changed, then correct the number
texts-language = "{ $language }" is no language tag; write one like "es" or "fr-CA"
# $place: made of ids, such as steps/drain/title
texts-no-place = the checklist has no text at "{ $place }"; take this one out
# $place: made of ids; $original: the checklist's own text
texts-missing = the text at "{ $place }" is missing; in the checklist it is: { $original }
texts-empty = the text is empty; translate it, or write the checklist's own
texts-long = the text has { $length } characters; { $most } are the most
# $numbers: numbers as the checklist has them; $original: the checklist's own text
texts-number = the text lacks { $numbers }, which the checklist's own has: { $original }
# $number: how many texts there are; $language: a language tag
texts-fit = nothing is wrong: { $number } texts in "{ $language }"

## What a checklist needs and a spec sheet lacks

# $who: lacks-of-entry, lacks-of-fact or lacks-of-item; $kind, $found: the kind of value as it stands in the file
lacks-key = { $who } needs "{ $key }" on the sheet "{ $sheet }": add it as a { $kind }
lacks-kind = { $who } needs "{ $key }" as a { $kind }, but the sheet "{ $sheet }" has a { $found } there
lacks-fact = "{ $key }" on the sheet "{ $sheet }" is "{ $found }"; it can be { $choices }
lacks-of-entry = entry "{ $entry }" of step "{ $step }"
lacks-of-fact = fact "{ $fact }"
lacks-of-item = item "{ $item }"
lacks-count = "{ $key }" on the sheet "{ $sheet }" is { $found }; it can be { $least } to { $most }
lacks-fasteners = "{ $key }" on the sheet "{ $sheet }" is for { $fasteners } fasteners, but the sheet counts { $there } of them: make the two agree

## What is done, as a run tells it

# $step: its id
action-step = step { $step } "{ $title }"
# $step: action-step
action-begin = begin { $step }
action-leave = leave { $step }
action-done = done { $step }
# $classes: each as "entry: class"
action-done-as = done { $step } ({ $classes })
action-vehicle = vehicle action { $action } "{ $title }"
action-sign = sign { $sign }
action-skip = skip { $step }
action-void = void { $step }
action-correct = correct { $step }
action-correct-as = correct { $step } ({ $classes })
action-observe = observe { $condition } = { $value }
action-expire = { $gate } grows too old
action-piece-off = take a piece off that the checklist does not know
action-piece-back = put back the last piece that the checklist does not know
action-finish = finish the job
action-stop = stop the job

## Why there is no plan

procedure-plan-over = The job has ended; there is nothing left to plan.
# $most: the most people
procedure-plan-people = A plan is made for 1 or { $most } people, and for no more than can be in steps at a time.
# $people: how many were asked for; $problems: problem-at, each on a line of its own
procedure-plan-crew = This checklist can't be planned for { $people } people:{ $problems }
procedure-plan-no-way = No allowed order leads from here to the end, if each entry turns out as planned for. Prove the checklist, or plan for another answer.
# $moments: how many were looked at
procedure-plan-not-found = No order to the end was found within { $moments } moments. Give the search a larger budget.
procedure-plan-cancelled = The search was ended before it found an order.

## How far a proof is

# $runs: procedure-runs-*; $doing: procedure-looking-*
procedure-progress = { $runs }: { $doing }
procedure-runs-plain = plain runs
procedure-runs-one-void = runs with at most one void
procedure-runs-one-observation = runs with at most one observation
procedure-looking-searching = searching
procedure-looking-safe-to-leave = looking for ways to make it safe to leave
procedure-looking-end = looking for ways to the end
procedure-looking-safe-stop = looking for ways to a safe stop

## What a proof claims, what it takes for granted, and what it does not claim

claim-safe = Safe: no allowed order of steps reaches a danger
claim-honest = Honest when wrong: when the vehicle is not as shown, nothing allowed leads into a further danger
claim-can-finish = Can finish: from every state there is a way to the end
claim-can-stop = Can stop: from every state a safe stop can be reached, whatever the entries say
claim-nothing-left = Nothing left: a finished job has every step worked or skipped, every piece back and every attest valid
claim-all-used = All of it used: every step, outcome, vehicle action, sign-off and danger can come up
assumed-entered = what is entered happened
assumed-not-entered = nothing that is not entered happened
assumed-classes = what a value means (inside, outside, below, …) is worked out rightly
assumed-not-yet = what is not yet so (too hot, short, unclear) does not stay so for ever
not-claimed-voids = more than one void in a run
not-claimed-other-vehicles = other vehicles: it holds for what the spec sheet says is on this one
not-claimed-void = runs with a void (not asked)
not-claimed-observations = more than one observation, or an observation together with a void
not-claimed-observation = runs with an observation (not asked)
not-claimed-emergencies = emergencies: a fact is always accepted, whatever the order

## What refutes a checklist

# $text: what the danger says, a sentence of the checklist
finding-danger = { $danger }: { $text }
finding-danger-piece-off = { $danger }: { $text } So it is where a piece is off that the checklist does not know: a rule must ask for tray_clear, and not for each item.
finding-danger-at-start = { $danger }: { $text } It holds at the start already.
finding-danger-never = the danger "{ $danger }" does not come up even when every rule is dropped: its predicate is probably wrong
finding-no-end = from here no allowed order of steps reaches the end of the job
finding-no-stop = from here a safe stop cannot be reached, whatever the technician does
finding-aged = the job is ending, and step "{ $step }" can no longer be done since a reading has grown too old
finding-no-recover = after { $condition } is observed to be { $value } the job cannot always finish, as "recover" says
finding-miscount = pieces are counted off that are off already, or put back that are on
finding-item-off = the job can be finished with { $pieces } of "{ $item }" off
finding-attest-open = the job can be finished while the attest "{ $sign }" is not valid
finding-step-open = the job can be finished while step "{ $step }" is not worked
finding-step-never = step "{ $step }" can never be begun
# $action: action-*
finding-never = never possible: { $action }
finding-permit-lapse = permit "{ $permit }" can never lapse, though it says what it holds while
finding-permit-renew = permit "{ $permit }" can lapse and never be renewed
finding-gate-lapse = gate "{ $gate }" can never lapse, though it says what it holds while
finding-gate-renew = gate "{ $gate }" can lapse and never be renewed
# $whose: idle-*
finding-idle = { $whose } makes { $name } = { $value }, which never changes anything
idle-begin = beginning step "{ $step }"
idle-leave = leaving step "{ $step }"
idle-done = doing step "{ $step }"
idle-vehicle-action = vehicle action "{ $action }"
idle-follow = what follows
finding-lost = step "{ $step }" is done with { $name } = { $value }, and that is lost at once
finding-not-good = step "{ $step }" is done with "{ $entry }" = { $class } as if that were good
finding-counts = step "{ $step }" counts { $pieces } of "{ $item }", but does not take off or put back so many
finding-permit-for-ever = permit "{ $permit }" never lapses, though it speaks of what somebody has looked at: say what it holds while
finding-gate-for-ever = gate "{ $gate }" is measured and stays known for ever: say what it holds while
finding-temperature = gate "{ $gate }" is a temperature: say what it holds while, and for how many minutes it is fresh
finding-not-made = nothing makes { $name } = { $value }

## What would close a finding

fix-none = no single change to a predicate was found that closes it
# $test: a piece of a predicate; $field: needs or while; $spot: spot or spot-in-file
fix-step = add "and { $test }" to "{ $field }" of step "{ $step }" ({ $spot })
fix-vehicle-action = add "and { $test }" to "needs" of vehicle action "{ $action }" ({ $spot })
# $field: done_when or safe_to_leave
fix-end = add "and { $test }" to "{ $field }" ({ $spot })

## What is odd, though it refutes nothing

remark-step-needs = what step "{ $step }" needs holds in every state that can be reached: it keeps nothing back
remark-action-needs = what vehicle action "{ $action }" needs holds in every state that can be reached: it keeps nothing back
remark-attest = nothing makes attest "{ $sign }" lapse
remark-item-not-back = item "{ $item }": no step puts it back
remark-item-not-off = item "{ $item }": no step takes it off
remark-item-unmoved = item "{ $item }": no step takes it off or puts it back
remark-good = entry "{ $entry }" of step "{ $step }" does not say which answers are good
remark-same = entry "{ $entry }" of step "{ $step }": every answer does the same
remark-unread = no predicate reads "{ $name }"
