# What a record says in English: its text, its pages, the customer's copy, the heads of its tables. Each message stands in
# `MESSAGES` of panside-record with the same arguments; the comment above says what they are. What a person typed is put
# in as it was typed; numbers are put in as the language writes them.

## Why a record or a part of it can't be made

# $repair_order: the repair order
record-unwritable = Writing the record of { $repair_order } as JSON failed. Make it again; if that fails too, report it.
# $checklist: hash of the checklist
record-proof = Reading the kept proof of the checklist { $checklist } failed. Prove the checklist again.
# $repair_order: the repair order; $why: what the PDF writer said
record-pdf = Writing the record of { $repair_order } as PDF failed: { $why }. Take it as JSON or as text, which are complete, and report it.
record-font-unreadable = a font of the program cannot be read

## Numbers, times, lists

record-decimal-sign = .
# a number with its unit
record-measure = { $value } { $unit }
record-hours-minutes = { $hours } h { $minutes } min
# $hours: to a tenth
record-hours-labor = { $hours } h
record-day-time = { $day } { $time }
# $who: a name
record-when-who = { $when } { $who }
# $ms: milliseconds
record-in-no-calendar = { $ms } ms after 1970 UTC
# $start: what was said so far
record-list-comma = { $start }, { $next }
record-list-semicolon = { $start }; { $next }
record-list-then = { $start }, then { $next }
# two sentences
record-sentences = { $first } { $next }
# $remark: what is added to what was said
record-with-remark = { $text } ({ $remark })
# $label: what a text is about
record-labeled = { $label }: { $text }
record-not-entered = not entered
# said where something is cut off
record-goes-on = … more on the next pages
# $name: a person; $role: technician, second_person or service_writer
record-person-as = { $name }, { $role ->
    [service_writer] service writer
    [second_person] second person
   *[technician] technician
}
# $later: the names that the person had later
record-person-later = { $name } (later { $later })
# $reason: as it was typed; $who: who answers for it
record-reason-says = { $reason }, says { $who }

## The first page

# $order: number of the repair order
record-record-of = Repair order { $order }
record-demo-mark = demo values, not for a vehicle
record-damaged-mark = made from damaged data
record-come-first = The vehicle maker's service information, the lift maker's instructions, local codes and licensed practice come first.
record-fact-order = Repair order
record-fact-vehicle = Vehicle
record-fact-vin = VIN
record-fact-plate = Plate
record-fact-engine = Engine
record-fact-odometer-in = Odometer in
record-fact-odometer-out = Odometer out
record-fact-started = Started
record-fact-state = Status
record-fact-people = People
record-fact-made = Record made
record-fact-sheet = Spec sheet
record-fact-status = At the end
record-state-open = still open
record-state-ending = still open, ending by stop and call
# $by: when and by whom
record-state-finished = finished { $by }
record-state-stopped = stopped before its end { $by }: { $reason }
record-state-as-far = as far as the damaged data can be read
record-heading-concern = Concern
record-heading-cause = Cause
record-heading-correction = Correction
record-heading-authorized = Authorized by the customer
record-no-go-ahead = no go-ahead entered
# $agreed: what was told, answered and agreed; $who: who signed it; $when: when
record-agreed-by = { $agreed }. Signed by { $who }, { $when }
record-agreed-in-all = Agreed in all
# $amount: with its currency
record-before-tax = { $amount } before tax
# $amount, $limit: with their currency
record-before-tax-at-most = { $amount } before tax, at most { $limit } with what may turn up
record-heading-parts = New parts
record-no-new-parts = none
# $number: its part number
record-part-numbered = { $name } ({ $number })
# $fitted: how many went in; $estimated: how many the estimate has
record-part-differs = { $fitted } in, { $estimated } estimated
record-part-estimated = { $estimated } estimated
record-heading-labor = Labor
record-labor-in-all = Labor in all
record-labor-unplanned = of it unplanned
record-labor-waiting = Waiting, nobody at work
record-labor-estimated = Labor estimated
# $hours: with their unit; $amount: with its currency
record-hours-for = { $hours }, { $amount }
# $steps: each with its time and the reason
record-labor-why = Unplanned: { $steps }.
# $steps: how many
record-labor-untimed = { $steps ->
    [one] One piece of work has
   *[other] { $steps } pieces of work have
} no time: entered all at once or later.
# $title: of a step
record-step-time = { $title } { $time }
record-heading-fluid = Fluid
record-fluid-filled = Filled in all
record-fluid-drained = Drained
record-fluid-none = none filled
record-heading-open = Recommended or open
# $signal: danger, warning, caution or notice; $danger: text of the danger
record-danger-now = { $signal ->
    [danger] DANGER
    [warning] WARNING
    [caution] CAUTION
   *[notice] NOTICE
} now: { $danger }
# $found: what was found wrong with the data
record-damaged-data = Damaged data: { $found }
# $changed: conditions with their values
record-status-now = The vehicle now: { $changed }.
# $title: of the step
record-skipped-step = Skipped: { $title }: { $reason }
# $text: the advice as it was typed
record-advised = Recommended: { $text }
# $text: what was found, as typed
record-found-tell = For the customer: { $text }
# $photos: the first digits of their numbers
record-photo-named = photo { $photos }
# $what: what turned up, as typed
record-supplement = Supplement: { $what }
record-agreed-at-first = Agreed at first
record-no-answer-yet = asked, no answer yet
# $codes: as they were read
record-codes-last = Trouble codes at the last reading: { $codes }
record-nothing-open = nothing
record-heading-signed = Signed by
record-nobody-signed = nobody

## What is missing

record-missing-piece-off = Off the vehicle
record-missing-unanswered = Customer asked, not settled
record-missing-found = Found, to be dealt with in this job
record-missing-attest-lapsed = Must be signed again
record-missing-voided = Voided and not corrected
record-missing-in-progress = In progress, not done
record-missing-entry-at = Not entered
record-missing-unexplained = Missed, no reason given
record-missing-not-done = Not done
record-missing-undecided = Not known whether it is part of this job
# $kind: what is missing; $count: how many
record-missing-count = { $kind }: { $count }, named on the next pages
# $what: the names
record-missing-named = { $kind }: { $what }
# $entry: its label; $step: title of its step
record-entry-of-step = "{ $entry }" at "{ $step }"
# $rule, $events: pieces by both counts
record-pieces-two-counts = { $name } { $rule } by the rules, { $events } by the events

## Estimates

record-heading-estimate = Estimate, before tax
record-estimate-parts = parts
# $hours: hours of labor
record-estimate-labor = labor, { $hours } h
record-estimate-sum = parts and labor
record-estimate-limit = at most, with what may turn up
# $lines: how many
record-estimate-unpriced = { $lines ->
    [one] One line has no price and is not in the sums.
   *[other] { $lines } lines have no price and are not in the sums.
}
# $what: what it is
record-may-turn-up = may turn up: { $what }

## The customer's copy

record-customer-title = Your repair order { $order }
record-heading-customer-concern = What you told us
record-heading-customer-cause = What we found
record-heading-customer-correction = What we did
record-heading-customer-agreed = What you agreed to
record-heading-customer-parts = New parts, fluid and labor
record-heading-customer-next = From here on
# $what: what turned up, as typed
record-supplement-declined = Not done, as you did not agree to it: { $what }
record-heading-customer-photos = Photos
record-customer-fluid = transmission fluid
record-customer-labor = Labor: { $hours }
record-customer-skipped = Not done: { $title }: { $reason }
record-customer-unfinished = This work is not finished. Please ask us before you drive.
record-customer-nothing-next = Nothing is left to do.
record-customer-closing = Please ask us about anything that is not clear. We keep the complete file of this work.

## The file

record-heading-turned-up = What turned up
# $by: when and who; $what: as typed, with its place and photos; $urgency: now, soon or tell
record-found-line = { $by }: found: { $what }, { $urgency ->
    [now] to be dealt with in this job
    [soon] recommended
   *[tell] the customer is told
}
# $by: when and who; $text: as typed
record-dealt-with-line = dealt with { $by }: { $text }
# $by: when and who; $what: as typed; $sum: what it comes to; $step: title of the step that waited
record-asked-line = { $by }: the customer was asked about { $what }, { $sum }, at "{ $step }"
# $by: when and who; $text: what was said
record-answer-line = { $by }: { $text }
# $by: when and who; $reason: as typed
record-went-on-line = { $by }: went on without it: { $reason }
# $by: when and who; $piece: as typed, with its place and photos; $count: how many
record-piece-line = { $by }: off, not in the checklist: { $piece }, { $count }
# $count: how many
record-piece-left = { $count } still off
# $count: how many
record-piece-back = { $count } on again
# $count: how many; $torque: as typed
record-piece-back-torque = { $count } on again, tightened to { $torque }
# $count: how many; $reason: as typed; $who: a name
record-piece-gone = { $count } not coming back: { $reason }, says { $who }
# $by: when and who; $reason: as typed
record-taken-back-line = taken back { $by }: { $reason }
record-photo-found = Found
record-photo-piece = Off, not in the checklist
record-heading-job = The job
record-heading-findings = Findings and decisions
record-heading-measurements = Measurements
record-heading-levels = Fluid level and cool-down
record-heading-torque = Torque, as clicked
record-no-torque = none
record-heading-tally = Parts removed and refitted
record-heading-sign-offs = Sign-offs
record-heading-missing = Missing
record-heading-time = Time
# $count: how many
record-heading-photos = Photos, { $count }
record-step-number = { $number } { $title }
record-column-value = value
record-column-sheet = sheet allows
record-column-result = result
record-column-pieces = pieces
record-column-clicked = clicked
record-column-tool = tool
record-column-removed = removed
record-column-refitted = refitted
record-column-new = new
record-column-left-off = left off
record-column-planned = planned
record-column-unplanned = unplanned
record-column-waiting = waiting
record-column-part = part
record-column-quantity = quantity
record-column-unit = unit
record-column-number = part number
record-column-price = price
record-column-amount = amount
record-column-currency = currency
record-column-estimated = estimated
record-column-phase = phase
record-column-reason = reason
record-column-step = step
record-column-entry = entry
record-all-pieces = all pieces
record-all-phases = all phases
record-standing-replaced = replaced by a later one
record-standing-not-done = step not done
record-standing-void = no longer counts
# $number: of the certificate
record-tool-certificate = certificate { $number }
# $what: pieces that are short; $who: who says so
record-counted-short = Counted short: { $what }: { $reason }, says { $who }
# $name: of the item; $counted, $expected: pieces
record-pieces-short = { $name } { $counted } of { $expected }
record-sign-not-signed = not signed
record-sign-valid = valid
record-sign-no-longer-valid = no longer valid
# $through: the event after which it must be signed again
record-sign-lapsed = must be signed again since { $when }, after { $through }
record-pin-given = PIN given
record-pin-set-by = PIN given, set by { $lead } with { $second }
record-pin-none = no PIN
record-step-unplanned = Unplanned { $time }: { $title }
record-step-waiting = Waiting { $time }: { $title }
record-time-in-all = From the start to the end: { $time }. Minutes are rounded down one by one.
# $steps: how many
record-time-untimed = Not timed (entered all at once, entered later, or the clock was set back): { $steps ->
    [one] one step
   *[other] { $steps } steps
}
# $gaps: how many
record-time-gaps = Gaps of unknown length, not in the total: { $gaps }

## Where the job went otherwise than planned

record-heading-voided = Voided
record-heading-skipped = Skipped, with reason
record-heading-missed = Missed and explained
record-heading-overrides = Overrides
record-heading-observed = Vehicle status corrected
record-heading-clock = Wall clock
record-heading-restarted = Tablet restarted
record-heading-differs = What does not agree
# $by: when and by whom; $title: of the step
record-voided-step = { $by } voided "{ $title }": { $reason }
# $with: the step that it builds on
record-voided-with = { $by } voided "{ $title }", with "{ $with }": { $reason }
record-voided-corrected = corrected since
record-voided-not-corrected = not corrected
record-voided-because = voided: { $reason }
record-explained-step = { $by } "{ $title }": { $reason }
# $label: of the entry; $class: what it turned out to be; $who: who answers for it
record-override-by = { $by } "{ $label }", { $class }: { $reason }, says { $who }
record-observed-value = { $by }: { $condition } is { $value }: { $reason }
# $steps: their titles
record-observed-undone = cannot have been done: { $steps }
record-observed-dangers = dangers then: { $dangers }
record-clock-back = { $when } set back by { $seconds } s
record-clock-forward = { $when } set forward by { $seconds } s
record-restarted-after = { $when } first entry after it: { $minutes } min since the entry before, by the wall clock only
record-restarted-unknown = { $when } first entry after it: how long since the entry before is not known, as the wall clock went back
# $seq: number of the event; $what: what differs
record-differs-event = Event { $seq }: { $what }
# $journal, $record: how many events
record-differs-length = The journal has { $journal } events and the record was made of { $record }.
# $record, $job: pieces
record-differs-pieces = { $name }: { $record } left off by the record, { $job } by the job
record-condition-value = { $condition }: { $value }

## What was proved

record-heading-proof = What the proof covers
record-proof-none = No proof came with this record.
record-proof-of-another = That is not the checklist of this job: the proof says nothing about it.
record-proof-proved = The order of steps that this checklist allows is proved safe.
record-proof-refuted = The order of steps is NOT safe: the checklist is refuted.
record-proof-not-decided = Whether the order of steps is safe is not decided.
record-proof-covers = The proof covers allowed orders of what was entered. It does not cover what was not entered or was entered wrongly, and it does not physically stop anyone.
record-heading-proof-details = Proved and assumed
# $engine: name and version of what proved
record-proof-states = { $states } states, engine { $engine }
# $hash: of the checklist
record-proof-checklist = Checklist that was proved: { $hash }
record-proof-limit = { $text }
record-proof-assumed = Assumed: { $text }
record-proof-not-claimed = Not claimed: { $text }
# $head: hash of the newest event
record-journal-witness = This record is made of { $events } entries of the job's journal; the newest has the hash { $head }.
record-heading-journal = Journal
record-journal-job = Job
record-journal-events = Events
record-journal-head = Head
record-journal-checklist = Checklist
record-journal-sheet = Sheet
record-paper-revision = { $id } revision { $revision }, { $hash }
record-chain-shows = Each event names the one before it by hash, so that an event changed, taken out, put in or moved shows. A tail cut off or a whole chain made anew does not show by itself: it shows against a head that was kept elsewhere, such as the one printed here.

## Everything

record-heading-entries = Entries by phase
record-entries-about = Times by the shop's clock. What the sheet allows is in brackets at the first value of an entry, with its source.
record-heading-torque-void = Torque that does not count
record-heading-actions = Vehicle actions
record-heading-cautions = Cautions of the steps that were done
record-heading-figures = Figures
# $numbers: of the steps
record-caution-before = { $signal ->
    [danger] DANGER
    [warning] WARNING
    [caution] CAUTION
   *[notice] NOTICE
}: { $text } (before { $numbers })
record-with-limits = { $value } [{ $limits }]
record-with-working = { $value } (calculated: { $steps })
record-with-deciding = { $value } (decided by: { $entries })
record-limit-checked = checked by { $who }
# $begun, $ended: when
record-attempt-done = { $begun } to { $ended } { $who }
record-attempt-left = { $begun }, left { $ended } { $who }
record-attempt-in-progress = { $begun }, in progress { $who }
record-attempt-corrected = corrected afterwards { $begun } { $who }
record-attempt-later = done earlier, entered later
# $since: when and by whom
record-attempt-void = no longer counts since { $since } ({ $reason })
record-step-undecided = not known whether it is part of this job
record-step-not-in-job = not in this job
record-step-not-done = not done
record-step-in-progress = in progress
record-step-done = done
record-step-lapsed = done, but must be signed again
record-step-voided = voided
record-step-skipped = skipped, with reason
record-step-missed = missed

## Events

record-event-number = event { $seq }
record-event-started = the start of the job
record-event-introduced = { $name } introduced as { $role ->
    [service_writer] service writer
    [second_person] second person
   *[technician] technician
}
# $title: of the step
record-event-begun = step "{ $title }" begun
record-event-left = step "{ $title }" left
record-event-entered = step "{ $title }" entered
record-event-done = step "{ $title }" done
record-event-skipped = step "{ $title }" skipped
record-event-voided = step "{ $title }" voided
record-event-corrected = step "{ $title }" corrected afterwards
record-event-explained = step "{ $title }" explained as missed
# $title: of the vehicle action
record-event-action = "{ $title }"
# $sign: text of the sign-off
record-event-signed = sign-off "{ $sign }" renewed
record-event-observed = vehicle status corrected: { $condition } is { $value }
record-event-expired = { $gate } grew too old
record-event-finished = the job finished
record-event-stopped = the job stopped
record-event-clock = the wall clock was set
# $what: as typed
record-event-found = found: { $what }
record-event-dealt-with = what was found was dealt with
# $what: as typed
record-event-asked = the customer was asked about { $what }
record-event-answered = the customer answered
record-event-went-on = the job went on without what was asked
# $piece: as typed
record-event-piece-off = off, not in the checklist: { $piece }
record-event-piece-back = a piece that the checklist does not know is on again
record-event-piece-gone = a piece that the checklist does not know does not come back
record-event-taken-back = something was taken back

## Values

record-value-signed = signed by { $name } as { $role ->
    [service_writer] service writer
    [second_person] second person
   *[technician] technician
}
# $value: with its unit; $at: a temperature
record-value-at = { $value } at { $at }
# $name: the coil; $value: its resistance, or its limits
record-value-coil = { $name } { $value }
record-no-trace = no trace
record-value-still-dry = checked again, still dry
record-value-not-reached = not reached: { $told }
record-value-pieces = { $name } { $pieces }
record-value-missing-pieces = the missing: { $told }
# $stages: what clicked, with its unit; $tool: what the shop calls it
record-value-clicked = { $stages }, { $tool }
record-value-adapter = crowfoot { $length } at { $angle }° on { $set }
record-value-turned = turned { $angles }°
record-value-excepted = wrench used anyway: { $told }
record-value-leads = leads { $value }
record-value-meter = meter ± ({ $percent } % + { $digits })
record-value-contact = { $value }, contact probe
# $set: the emissivity that it was set to
record-value-infrared = { $value }, infrared set to { $set }, { $surface ->
    [coated] coated
    [oxidized] oxidized
    [rusty] rusty
   *[bright] bright
} surface
record-value-ambient = ambient { $value }
record-value-new-fluid = new fluid at { $value }
record-value-difference = the difference: { $told }
# $short: the first digits of its hash
record-value-photo = photo { $short }, { $width } × { $height }
record-value-none = none
record-value-none-of-list = none of the list
record-value-waited = waited
# $says: why, as a sentence
record-value-decided = { $class }. { $says }
# $table: what the table says; $says: why it says so, as a sentence; $told: who says what
record-value-against = { $class }, AGAINST THE TABLE, which says "{ $table }": { $says } Decided otherwise: { $told }
# $entry: one that decided; $is: what it was
record-value-decided-by = { $entry }: { $is }
# What was decided otherwise than the table says: $class: what was decided; $table: what the table says
record-called-against = { $class } AGAINST THE TABLE, which says "{ $table }"
# $quantity: how many, or hours with their unit; $price: of one, or that there is none
record-value-priced = { $quantity } { $what } at { $price }
record-value-no-price = no price
# $amount: with its currency
record-value-may-turn-up = { $what } may turn up, at most { $amount }
record-value-agreed = { $amount } before tax
record-value-declined = declined
record-value-declined-amount = { $amount } declined
record-value-pending = asked, no answer yet
# $means: in_person, telephone or written
record-value-means = { $means ->
    [in_person] in person
    [telephone] by phone
   *[written] by written message
}
# $time: as typed
record-value-given-at = at { $time }
record-bound-at-most = at most { $value }
record-bound-at-least = at least { $value }
record-bound-at = at { $value }
record-bound-holds = holds { $value }
record-bound-unseen = unseen at most { $value }
record-limit-not-on-sheet = not on the sheet
record-limit-range = { $low } to { $high }
record-limit-torque = { $stages } ± { $off } %
record-limit-angle = { $degrees }° ± { $off }°
record-how-unreadable = How this was worked out is kept in a form that this version of Panside can't read ({ $kind }, version { $version }). The value and its class stand as they were entered; a newer version shows the steps.

## Pages

record-page-number = page { $page } of { $pages }
record-head-of-journal = Head of the journal { $head }
record-attachment-about = The record that these pages show, as data.
# $sign: what stands for each; $codes: their numbers
record-unshown = Characters that these pages have no letter for, each shown as { $sign }: { $codes }. The attached data has them.
# $title, $says: what the figure shows
record-figure-alt = { $title }. { $says }
record-photo-label = { $label }:
# $title: of the step; $by: when and by whom
record-photo-origin = · { $title }, { $by }
record-photo-alt = Photo. { $label }: { $caption }
# $why: as a sentence goes on
record-photo-lacking = The picture cannot be shown: { $why }.
record-photo-not-given = it was not given
record-photo-no-hash = its hash is none
record-photo-not-in-store = its file is not in the store
record-photo-altered = its file is not the one that was taken in
record-photo-damaged = its file is damaged ({ $found })
record-photo-unreadable = its file cannot be read ({ $found })
record-photo-press-colors = its colors are for a printing press, which these pages cannot carry
record-day-no-clock = The times of this job cannot be drawn on a clock.
# $time: how long in all
record-lane-engine = engine running { $time }
record-lane-waiting = waiting { $time }
record-lane-unplanned = unplanned { $time }
record-day-alt = The job by the clock.
# $value: how high the vehicle was; $from: since when
record-day-from = { $value } from { $from }
record-day-lift = The vehicle was: { $values }.
record-day-bar = { $from } to { $to } { $what }
record-day-never = never
# $lane: what it is of, and how long in all; $bars: from when to when
record-day-lane = { $lane }: { $bars }.
record-day-until = Up to { $day } { $time }.
