# What Panside says in English. Each message stands in `MESSAGES` of panside-job with the same arguments; the comment
# above it says what they are. A step, sign-off, vehicle action or danger is given by its text in the checklist; a condition,
# gate or value by its name in words; a measured value with its unit. A sentence may begin with an argument: whoever
# shows it makes the first letter a capital.

## Why a command is refused

refused-finished = The job is finished. Nothing more can be entered.
refused-stopped = The job was stopped. Nothing more can be entered.
refused-ending = The job is ending: stop and call. Only steps that make the vehicle safe to leave can begin.
refused-not-started = The job has not started.
# $step: title of the step
refused-not-in-job = "{ $step }" is not part of this job.
# $step: title of the step
refused-undecided = It is not known yet whether "{ $step }" is part of this job.
# $first: title of a step of an earlier part
refused-phase = An earlier part of the job is still open. Do "{ $first }" first.
# $first: title of the step that comes before
refused-after = Do "{ $first }" first.
# $what: title of the step or vehicle action
refused-needs = "{ $what }" is not possible now.
refused-finish = The job cannot be finished yet.
# $step: title of the step
refused-asked = "{ $step }" can't be done before the customer has answered.
# $what: what the customer was asked about, as typed
refused-not-declined = The customer has not declined "{ $what }". Enter the answer first, or take the question back.
# $what: as typed
refused-taken-back = "{ $what }" was taken back.
# $what: as typed
refused-dealt-with = "{ $what }" is dealt with already.
refused-nothing-said = Say what it is: tap a word or type it.
# $count, $most: numbers
refused-piece-count = { $count } pieces can't be off. Enter how many there are, from 1 to { $most }.
# $piece: what it is, as typed; $off: how many are off
refused-pieces-off =
    { $off ->
        [0] Nothing of "{ $piece }" is off the vehicle.
       *[other] Of "{ $piece }" { $off } are off the vehicle. Enter how many of them.
    }
refused-stop = The vehicle cannot be left like this.
# $permit: text of the sign-off; $step: title of the step that gives it
refused-permit-missing = Not signed yet: "{ $permit }". Sign it at "{ $step }".
# $permit: text of the sign-off; $step: title of the step that gives it
refused-permit-lapsed = Must be signed again: "{ $permit }". Check again, then sign it at "{ $step }".
# $step: title of the step somebody is in
refused-busy = Everyone is busy. Finish or leave "{ $step }" first.
# $step: title of the step
refused-in-progress = "{ $step }" is already in progress.
# $step: title of the step
refused-not-in-progress = Nobody is working on "{ $step }". Begin it first.
# $step: title of the step
refused-worked = "{ $step }" is already done.
# $step: title of the step
refused-not-worked = "{ $step }" is not done.
# $step: title of the step
refused-voided = "{ $step }" is voided. Correct it first.
# $step: title of the step
refused-not-voided = "{ $step }" is not voided, so there is nothing to correct.
# $step: title of the step
refused-skipped = "{ $step }" is skipped.
# $step: title of the step
refused-not-missed = "{ $step }" was not missed.
# $step: title of the step
refused-may-not-skip = "{ $step }" cannot be skipped.
# $step: title of the step
refused-while = "{ $step }" cannot be done now.
# $step: title of the step somebody is in
refused-stands = Somebody is working on "{ $step }". Finish or leave it first.
# $what: title of the vehicle action
refused-same-vehicle-action = "{ $what }" would change nothing.
# $what: name of the condition; $value: the value it has
refused-same-value = { $what } is already shown as { $value }.
# $signal: danger, warning, caution or notice; $danger: text of the danger
refused-danger =
    { $signal ->
        [danger] Danger!
        [warning] Warning!
        [caution] Caution!
       *[notice] Notice.
    } { $danger }
# $kind: step, entry, vehicle action, sign-off, condition, value, found, question or piece; $name: what was asked for
refused-no-such =
    { $kind ->
        [step] This checklist has no step "{ $name }".
        [entry] This checklist has no entry "{ $name }".
        [condition] This checklist has no condition "{ $name }".
        [value] This checklist has no value "{ $name }".
        [found] Nothing was found or asked with number { $name }.
        [question] The customer was asked nothing with number { $name }.
        [piece] No piece came off with number { $name }.
        [sign_off] This checklist has no sign-off "{ $name }".
       *[vehicle_action] This checklist has no vehicle action "{ $name }".
    }
# $start: the beginning of what was typed; $most: number of characters
refused-too-long = The text that begins with "{ $start }" is too long: { $most } characters at most. Shorten it.
# $found, $most: numbers
refused-too-many = { $found } at once is too many: { $most } at most. Enter fewer.
refused-no-reason = A reason is missing. Say why.
refused-no-person = Only the shop's people can work and sign. Add the person to the shop's list, or choose somebody from it.
refused-no-role = { $name } is not { $role ->
    [service_writer] a service writer
   *[technician] a technician
} in the shop's list. Choose somebody who is, or change the list.
# $step: title of the step
refused-missing = "{ $step }" is not complete.
# $entry: label of the entry
refused-not-yet = { $entry }: not yet.
# $entry: id of the entry; $class: what it was taken for
refused-class = The entry "{ $entry }" cannot be taken as "{ $class }". Enter it again.

## Signatures

refused-no-signature = A signature is missing.
# $sign: text of the sign-off
refused-sign-untrue = This cannot be signed, because it is not true now: "{ $sign }".
# $sign: text of the sign-off
refused-sign-valid = Already signed and still valid: "{ $sign }".
# $sign: text of the sign-off; $step: title of the step
refused-sign-not-asked = "{ $step }" does not ask for this signature: "{ $sign }".
# $sign: text of the sign-off
refused-sign-twice = This is signed twice: "{ $sign }". Once is enough.
# $sign: text of the sign-off; $name: who signed
refused-sign-same-person = "{ $sign }" must be signed by someone other than { $name }, who is doing the step.
# $sign: text of the sign-off; $name: who works now
refused-sign-other-person = "{ $sign }" must be signed by the person doing the step. { $name } is working now.
# $sign: text of the sign-off; $by: technician, second_person or service_writer
refused-sign-role =
    { $by ->
        [service_writer] "{ $sign }" is signed by the service writer.
        [second_person] "{ $sign }" is signed by a second person.
       *[technician] "{ $sign }" is signed by a technician.
    }
# $name: who signs
refused-pin = This is a hold point. { $name } must give a PIN to sign it.
# $sign: text of the sign-off
refused-sign-with-done = "{ $sign }" is signed together with Done, not before.

## What is missing at a step

# $entry: label of the entry
missing-entry = { $entry } is missing.
# $entry, $estimate: labels of entries
missing-answer-anew = { $estimate } was changed after { $entry } was entered. Ask the customer about it as it is now, and enter the answer again.
# $sign: text of the sign-off; $by: technician, second_person or service_writer
missing-signature =
    { $by ->
        [service_writer] The service writer must sign "{ $sign }".
        [second_person] A second person must sign "{ $sign }".
       *[technician] Sign "{ $sign }".
    }

## What does not hold

# $what: name of the condition; $is: its value; $wants: the values that would do
unmet-value = { $what } is { $is }; needs { $wants }.
# $what: name of the gate; $is: its class; $wants: the classes that would do
unmet-gate = { $what } is { $is }; needs { $wants }.
# $what: name of the gate; $is: its class, where only an open question would do
unmet-gate-settled = { $what } is { $is } already.
# $what: name of the gate; $wants: the classes that would do
unmet-gate-unknown = { $what } is not known; needs { $wants }.
# $what: name of the gate; $last: the value last entered; $wants: the classes that would do
unmet-gate-read = { $what } last read { $last }; needs { $wants }.
# $what: name of the gate; $last: the value last entered; $limit: the limit; $name: what the sheet calls it
unmet-gate-at-most = { $what } last read { $last }; needs at most { $limit } ({ $name }).
# $what: name of the gate; $last: the value last entered; $limit: the limit; $name: what the sheet calls it
unmet-gate-at-least = { $what } last read { $last }; needs at least { $limit } ({ $name }).
# $what: name of the gate; $last: the value last entered; $low, $high: the limits; $name: what the sheet calls them
unmet-gate-within = { $what } last read { $last }; needs { $low } to { $high } ({ $name }).
# $what: name of the gate; $last: the value last entered; $minutes: how long ago it was entered
unmet-gate-lost =
    { $minutes ->
        [0] { $what } read { $last } just now, which no longer counts. Read it again.
        [one] { $what } read { $last } one minute ago, which no longer counts. Read it again.
       *[other] { $what } read { $last } { $minutes } minutes ago, which no longer counts. Read it again.
    }
# $what: name of the gate; $last: the value last entered
unmet-gate-restarted = { $what } read { $last } before the tablet was restarted, so how old that is is not sure. Read it again.
# $step: title of the step
unmet-worked = "{ $step }" is not done.
# $step: title of the step
unmet-not-worked = "{ $step }" is done already.
# $sign: text of the sign-off; $step: title of the step that gives it
unmet-signed = "{ $sign }" is not signed or must be signed again ("{ $step }").
# $sign: text of the sign-off
unmet-not-signed = "{ $sign }" is signed.
# $item: name of the item; $off: how many pieces are off the vehicle
unmet-empty =
    { $off ->
        [0] No { $item } is off the vehicle.
       *[other] { $item }: { $off } off the vehicle.
    }
# $piece: what it is, as typed; $off: how many are off
unmet-piece-off = { $piece }: { $off } off the vehicle, not in the checklist. Put back what is off, or say why it does not come back.
# $what: what the customer was asked about, as typed; $standing: open, below or declined
unmet-asked =
    { $standing ->
        [declined] The customer declined "{ $what }". Go on without it, with a reason, or stop the job.
        [below] The customer agreed to less than was asked for "{ $what }". Enter the full amount, ask for less, or go on without it.
       *[open] The customer was asked about "{ $what }" and has not answered. Enter the answer.
    }
# $what: as typed
unmet-found = Found, to be dealt with in this job: "{ $what }".
unmet-never = The checklist never allows this.

## Entries of any kind

# $what: what something is called, or a value as it was entered
as-said = { $what }
# What kinds of entry are called.
kind-sign-off = sign-off
kind-reading = reading
kind-level = fluid level
kind-coil = coil reading
kind-coils = list of coil readings
kind-cool-down = probed temperature
kind-balance = fluid balance
kind-count = count
kind-torque = torque
kind-photo = photo
kind-choice = choice
kind-several = choice of several
kind-decision = decision
kind-scan = scan
kind-timer = wait
kind-note = note
kind-estimate = price estimate
kind-authorization = customer's answer
# What the classes of each kind are called, in a row of other words.
class-sign-off-signed = signed
class-reading-read = recorded
class-reading-inside = within limits
class-reading-outside = out of limits
class-level-below = below the low mark
class-level-in = in range
class-level-above = above the high mark
class-level-unclear = too close to call
class-level-not-reached = not reached
class-coil-inside = within limits
class-coil-outside = out of limits
class-coil-open = open
class-coil-short = shorted
class-coil-unclear = too close to call
class-coils-inside = all within limits
class-coils-one = one out of limits
class-coils-several = several out of limits
class-coils-unclear = too close to call
class-cool-down-cool = cool
class-cool-down-hot = hot
class-balance-closes = balanced
class-balance-differs = does not balance
class-balance-explained = does not balance, explained
class-count-all = all there
class-count-short = short
class-count-accounted = short, accounted for
class-torque-inside = within limits
class-torque-outside = out of limits
class-torque-by-exception = out of limits, used anyway
class-photo-taken = taken
class-scan-read = read
class-timer-elapsed = waited
class-note-written = written
class-estimate-estimated = estimated
class-authorization-agreed = agreed
class-authorization-declined = declined
class-authorization-pending = no answer yet
class-authorization-below = less than the estimate
# $wants: the kind that is asked for; $has: the kind that was entered
entry-kind = This asks for a { $wants }; a { $has } was entered.
# $key: key on the spec sheet
entry-no-sheet-value = The spec sheet has no value "{ $key }" that can be used here. Correct the sheet.
# $name: who signed
sign-given = Signed by { $name }.

## Readings

# $wants: the unit asked for; $has: the unit entered
reading-unit = { $wants } expected, { $has } entered.
# $value: as typed
reading-read = { $value } recorded.
# $value: as typed
reading-inside = { $value } is within limits.
# $value: as typed; $limit: the limit; $name: what the sheet calls it
reading-above = { $value }; needs at most { $limit } ({ $name }).
# $value: as typed; $limit: the limit; $name: what the sheet calls it
reading-below = { $value }; needs at least { $limit } ({ $name }).
# $value: as typed; $low, $high: the limits; $name: what the sheet calls them
reading-not-within = { $value }; needs { $low } to { $high } ({ $name }).

## Fluid level

# $class: below, in or above; $readings: how many readings agree
level-agree =
    { $class ->
        [below] Fluid level is below the band; { $readings } readings agree.
        [above] Fluid level is above the band; { $readings } readings agree.
       *[in] Fluid level is in the band; { $readings } readings agree.
    }
level-no-trace-confirmed = Fluid level is below the stick, by an unknown amount.
# $readings: how many there are
level-too-few =
    { $readings ->
        [0] No reading yet. Read the stick twice.
       *[other] One reading is not enough. Wipe the stick and read again.
    }
# $from, $to: the temperatures between which the sheet's chart holds
level-outside-chart = The chart covers { $from } to { $to } only. Bring the fluid to that temperature and read again.
level-no-trace = The stick stayed dry. Is the stick fully seated? Check the temperature and the idle, then read again.
# $agreement: how far readings may differ
level-disagree = The readings do not agree. They may differ by at most { $agreement }. Wipe the stick and read again.
# $spread: how far they differ; $agreement: how far they may
level-disagree-by = The readings differ by { $spread }; at most { $agreement } is allowed. Wipe the stick and read again.
level-disagree-dry = The stick was dry at some of the readings only. Wipe the stick and read again.
level-no-agreement = How far readings may differ is not on the sheet; they count together as they are on the same side of the marks.
level-classes-differ = The readings are on both sides of a mark. Read again.
# $class: below or above; $distance: how far from the nearest mark; $low, $high: the band; $temperature: at which it holds
level-off-by =
    { $class ->
        [above] { $distance } above the high mark; the band is { $low } to { $high } at { $temperature }.
       *[below] { $distance } below the low mark; the band is { $low } to { $high } at { $temperature }.
    }
# $pour: how much at once; $pours: how many times; $estimate: what would bring it to the middle of the band
level-add =
    { $pours ->
        [one] Add { $pour }, then read again. The estimate is { $estimate }; stay below it.
       *[other] Add { $pours } times { $pour }, then read again. The estimate is { $estimate }; stay below it.
    }
# $estimate: what would bring it to the middle of the band
level-take-out = Take out about { $estimate }, then read again.
# $gain: rise for each litre; $additions: how many it was learned from
level-gain-learnt =
    { $additions ->
        [one] Calculated with { $gain }, learned from what was added here.
       *[other] Calculated with { $gain }, learned from { $additions } additions here.
    }
# $gain: rise for each litre
level-gain-sheet = Calculated with { $gain }, from the spec sheet.
# $value: the value's name
level-no-gain = No amount is calculated: "{ $value }" is not on the sheet, and nothing was learned here yet.
# $why: why shifts are not diagnosed yet
level-closed =
    { $why ->
        [level_above] Don't diagnose shifts yet: too much fluid foams and spoils the shifts too. Bring it into the band, then try the concern again.
       *[other] Don't diagnose shifts yet: bring the level into the band, then try the concern again.
    }
# $by: who says so; $reason: why
level-given-up = It can't be brought into the band, says { $by }: { $reason }.

## Coils

# $is: the coil at the temperature of its limits; $at: that temperature; $low, $high: the limits; $name: what the sheet calls them
coil-inside = { $is } at { $at }: within { $low } to { $high } ({ $name }).
# $is: the coil at the temperature of its limits; $at: that temperature; $low, $high: the limits; $name: what the sheet calls them
coil-below = { $is } at { $at }: below { $low } to { $high } ({ $name }). Turns are shorted, or it is the wrong part.
# $is: the coil at the temperature of its limits; $at: that temperature; $low, $high: the limits; $name: what the sheet calls them
coil-above = { $is } at { $at }: above { $low } to { $high } ({ $name }). Check the pins, then the coil.
# $is: the coil at the temperature of its limits, or OL; $at: that temperature
coil-open = { $is } at { $at }: open. Check the connector and the wire before you blame the coil.
# $is: the coil at the temperature of its limits; $at: that temperature
coil-short = { $is } at { $at }: shorted. Check the connector and the wire before you blame the coil.
# $least, $most: what it may be with every error; $at: the temperature of the limits; $low, $high: the limits
coil-unclear = { $least } to { $most } at { $at }, meter and temperature errors included: too close to call against { $low } to { $high }. Measure closer to { $at } or with a more accurate meter.
coil-meter-unknown = The meter error is not given, so the reading is used as it is.
# $count: how many coils were measured, 2 or more
coils-inside = All { $count } coils are within their limits.
coils-none = No coil has been measured yet.
# $name: the coil as it was entered
coils-unknown = The spec sheet lists no coil "{ $name }".
# $name: the coil
coils-twice = The coil "{ $name }" was entered twice. Keep one of its readings.
# $name: the coil
coils-missing = The coil "{ $name }" is missing. Measure every coil on the list.

## Hot parts that cool

# $value: as probed; $limit: the touch limit; $name: what the sheet calls it
cool-down-cool = { $value } is cool: at most { $limit } ({ $name }).
# $value: as probed; $limit: the touch limit; $name: what the sheet calls it
cool-down-hot = { $value } is hot; needs at most { $limit } ({ $name }).
# $time: time of day; $minutes: minutes from the reading
cool-down-not-before =
    { $minutes ->
        [0] It is near its limit. Probe it again.
        [one] Not before { $time }, in one minute. Probe it again then.
       *[other] Not before { $time }, in { $minutes } minutes. Probe it again then.
    }
# $counted: readings that count so far; $wants: how many are needed
cool-down-too-few = Not yet enough readings to tell when: { $counted } of { $wants }. Probe it again a few minutes apart.
cool-down-rises = It is hotter than before: the engine was run, or a hot core heats it again. Wait, then start over from here.
cool-down-never = The limit is not above the ambient temperature, so it is never reached. Check both.
cool-down-no-curve = The readings give no cooling curve. Take more, a few minutes apart.
cool-down-spread = The readings scatter too much to give a time. Take more, a few minutes apart.
cool-down-no-ambient = Enter the ambient temperature as well: no time can be calculated without it.
# $readings: how many
cool-down-older =
    { $readings ->
        [one] One earlier reading does not count: it was heated since.
       *[other] { $readings } earlier readings do not count: it was heated since.
    }
# $readings: how many
cool-down-left-out =
    { $readings ->
        [one] One earlier reading does not count: the tablet was restarted since, so when it was taken is not sure.
       *[other] { $readings } earlier readings do not count: the tablet was restarted since, so when they were taken is not sure.
    }
# $lowest, $highest: what the surface may be
cool-down-infrared = By infrared the surface is { $lowest } to { $highest }; the hottest counts.
cool-down-no-evidence = This does not prove that it is cool: a bright or bare surface reads far too low by infrared. Use a contact probe, or coat a spot.

## Fluid balance

# $drained, $added: litres at 15 °C; $uncertainty: of their difference
balance-closes = The balance closes: { $drained } out, { $added } in at 15 °C, within ± { $uncertainty }.
# $difference: litres at 15 °C; $uncertainty: its own; $drained, $added: litres at 15 °C
balance-more-in = { $difference } more went in than came out, more than the ± { $uncertainty } of measuring ({ $drained } out, { $added } in, at 15 °C).
# $difference: litres at 15 °C; $uncertainty: its own; $drained, $added: litres at 15 °C
balance-less-in = { $difference } less went in than came out, more than the ± { $uncertainty } of measuring ({ $drained } out, { $added } in, at 15 °C).
balance-beyond-capacity = That is more than the transmission holds. Check the figures.
# $entry: label of the entry
balance-no-entry = The balance can't be worked out: "{ $entry }" was not entered.
# $value: the value's name
balance-no-unseen = "{ $value }" is not on the sheet, so nothing is allowed for it.
# $value: the value's name
balance-no-capacity = "{ $value }" is not on the sheet, so the figures are not compared with it.
balance-explain = Say where the fluid is, and who says so.
# $by: who says so; $reason: where it is
balance-explained = Explained by { $by }: { $reason }.

## Counts

# $items: what was counted, each with "counted/expected"
count-all = All there: { $items }.
# $items: what is short, each with "counted/expected"
count-short = Short: { $items }. Find them, or say where they are and who says so.
# $items: what is short, each with "counted/expected"; $reason: where they are; $by: who says so
count-accounted = Short: { $items }. Accounted for by { $by }: { $reason }.
# $item: name of the item; $counted, $expected: how many
count-more = { $item }: { $counted } counted, only { $expected } expected. Count again.
# $item: name of the item
count-item-missing = { $item }: not counted yet.
# $item: name of the item
count-item-unknown = { $item }: not counted here.

## Torque

# $stages: how many stages
torque-inside =
    { $stages ->
        [one] Clicked within tolerance.
       *[other] All { $stages } stages clicked within tolerance.
    }
# $stage: which stage, from 1; $setting: as clicked; $lowest, $highest: what the sheet allows
torque-outside = Stage { $stage }: set to { $setting }; needs { $lowest } to { $highest }.
# $stage: which stage, from 1; $setting: as clicked; $lowest, $highest: what the sheet allows; $fits: another unit
torque-unit-slip = Stage { $stage }: set to { $setting }; needs { $lowest } to { $highest }. The number would fit in { $fits }: check the scale.
# $setting: as clicked; $tool: name of the tool; $lowest, $highest: its range
torque-tool-range = { $setting } is outside the range of { $tool } ({ $lowest } to { $highest }). Use another tool.
# $tool: name of the tool; $due: the last day of its calibration, YYYY-MM-DD
torque-calibration = The calibration of { $tool } was due on { $due }. Use another tool.
# $stage: which stage, from 1; $can: yes or no, whether a setting of this tool can be proved; $from, $to: proved settings
torque-not-proved =
    { $can ->
        [yes] Stage { $stage }: within tolerance as set, but not with the tool's error added. Set it between { $from } and { $to }.
       *[no] Stage { $stage }: within tolerance as set. The tolerance is tighter than this tool's error, so no setting is sure.
    }
torque-may-except = You can use this wrench anyway: say why, and who allows it.
# $by: who says so; $reason: why
torque-by-exception = Allowed by { $by }: { $reason }.
# $stage: which stage, from 1; $setting: what to set on the tool; $wanted: what is wanted at the bolt
torque-adapter = Stage { $stage }: with this crowfoot set { $setting } for { $wanted } at the bolt.
# $wants: how many fasteners the sheet has; $has: how many angles were entered
torque-angle-count = The sheet asks for the angle of { $wants } fasteners; { $has } were entered. Enter one for each.
# $bolt: which, from 1; $turned: as entered; $target: what the sheet wants; $left: what is left
torque-angle-short = Fastener { $bolt }: turned { $turned } of { $target }. Turn it { $left } more.
# $bolt: which, from 1; $turned: as entered; $target: what the sheet wants
torque-angle-over = Fastener { $bolt }: turned { $turned }, over { $target }. Do not turn back; loosen or replace it as the sheet says.
# $bolts: how many
torque-angles-inside =
    { $bolts ->
        [one] Turned to its angle.
       *[other] All { $bolts } turned to their angle.
    }
# $wants: how many stages the sheet has; $has: how many settings were entered
torque-stage-count = The pattern has { $wants } stages; { $has } settings were entered. Enter one for each stage.
# $text: what stands there
tool-date = The calibration date "{ $text }" of the tool is not a date like 2026-12-31. Correct the tool.
tool-no-name = Say what the shop calls the tool.
tool-no-number = A number is missing. Type it as it is on the certificate.
tool-no-date = A date is missing. Type it as year, month and day: 2027-03-01.
# $day: when it was calibrated; $today: the day by the tablet's clock
tool-calibrated-ahead = It cannot have been calibrated on { $day }: today is { $today }.
# $day: when it was calibrated; $due: the last day of that calibration
tool-calibrated-after = It was calibrated on { $day }, so that cannot have ended on { $due }. Check the certificate.
# $due: the last day of its calibration; $today: the day by the tablet's clock
tool-past = Its calibration ended on { $due }; today is { $today }. Nothing torqued with it counts.
# $percent: the deviation that is taken
tool-class-a = No class is given, so { $percent } % is used, as for ISO 6789 class A in this range.

## Photos, answers, texts, waits, notes

photo-taken = Photo saved.
photo-hash = The photo was not saved whole. Take it again.
photo-size = The photo is empty. Take it again.
# $answer: label of the option
choice-made = Answered: { $answer }.
# $class: what was chosen; $known: labels of the options
several-made = Found: { $answers }.
several-none = None of the list was found.
several-one = Choose at least one of the list.

## Decisions

# What decides: $step: the title of another step; $entry: what is entered there
decision-of = { $step }: { $entry }
# What decides: $read: a value as it was typed; $class: what it turned out to be
decision-read = { $read }, { $class }
# An entry that decides and was not made.
decision-missing = not entered
# What decides: a list of which nothing was found.
decision-none = nothing of the list
# $entry: what is to be entered
decision-first = Enter this first, it is decided by it: { $entry }.
# $class: what was chosen; $says: why the table says otherwise, as a sentence
decision-not = "{ $class }" can't be decided here. { $says }
# $says: what the table says, as a sentence
decision-why = { $says } To go against that, give a reason and a name.
# $name: who works the step
decision-second = { $name } works this step. Somebody else must stand for going against the table.
# $class: what the table says; $by: who decided otherwise
decision-against = Against the table, which says "{ $class }". { $by }: { $reason }.
# $entry: what was decided
decision-again = What decides "{ $entry }" has changed. Decide it again.
choice-unknown = "{ $class }" is not among the answers: { $known }.
# $text: as read
scan-read = Read: { $text }.
scan-no-codes = No codes.
scan-empty = Nothing was read. Scan it again or type it.
# $length: how many characters there are
vin-length = A vehicle identification number has 17 characters; here are { $length }.
# $character: the character; $position: its position, from 1
vin-character = "{ $character }" in position { $position } cannot be part of a vehicle identification number. I, O and Q are never used.
# $found: the check digit; $expected: what the other characters ask for
vin-check-digit = The check digit in position 9 is { $found }; the rest calls for { $expected }. Read it again. Outside North America it need not match.
# $found: the character in position 10
vin-year = "{ $found }" in position 10 is not a model year. Read it again.
vin-fits = Its check digit matches.
# $code: the code; $system: powertrain, chassis, body or network; $origin: who defines it; $part: its family
code-told =
    { $origin ->
        [maker] { $code }: { $system }, defined by the vehicle's maker. Look in the maker's list.
        [reserved] { $code }: { $system }, reserved.
       *[standard] { $code }: { $part ->
            [none] { $system }
            [computer] computer and its outputs
            [transmission] transmission
            [hybrid] hybrid propulsion
           *[other] { $part }
        }, defined by the standard.
    }
# $code: the code; $system: powertrain, chassis, body or network; $origin: who defines it; $part: its family
code-apart =
    { $code }, other system: { $part ->
        [none] { $system }
        [fuel_and_air] fuel and air metering
        [ignition] ignition and misfire
        [emissions] auxiliary emission controls
        [speed_and_idle] speed and idle
       *[other] { $part }
    }{ $origin ->
        [maker] , defined by the vehicle's maker
       *[other] {""}
    }. Recorded, not diagnosed here.
# $minutes: how long the wait is
timer-elapsed =
    { $minutes ->
        [one] One minute has passed.
       *[other] { $minutes } minutes have passed.
    }
# $left: minutes left; $minutes: how long the wait is
timer-running =
    { $left ->
        [one] One minute left of { $minutes }.
       *[other] { $left } minutes left of { $minutes }.
    }
# $left: minutes left; $minutes: how long the wait is
timer-restarted =
    { $left ->
        [one] One minute left of { $minutes }: the tablet was restarted, and what passed before that is not sure.
       *[other] { $left } minutes left of { $minutes }: the tablet was restarted, and what passed before that is not sure.
    }
# $minutes: how long the wait is
timer-not-begun =
    { $minutes ->
        [one] The wait of one minute begins with the step.
       *[other] The wait of { $minutes } minutes begins with the step.
    }
note-written = Note written.
note-empty = The note is empty.

## Estimates, and what the customer answers

# $sum, $parts, $labor: amounts with their currency; $hours: hours of labor
estimate-comes-to = { $sum } before tax: parts { $parts }, labor { $labor } for { $hours } h.
# $limit: an amount with its currency
estimate-limit = With all that may turn up at most { $limit } before tax.
# $lines: how many
estimate-unpriced =
    { $lines ->
        [one] One line has no price and is not in the sum.
       *[other] { $lines } lines have no price and are not in the sum.
    }
estimate-empty = The estimate is empty. Add a part or labor.
# $place: which line, from 1
estimate-no-name = Line { $place } has no name. Say what it is, or take the line out.
# $what: the line's name
estimate-zero = { $what }: none of it. Enter how much, or take the line out.
# $what: the line's name; $why: a sentence that says what is wrong with a number of it
estimate-line = { $what }: { $why }
# $amount: with its currency; $by: who gave the answer, as typed; $means: in_person, telephone or written
authorization-agreed = Agreed to { $amount } before tax by { $by }, { $means ->
        [in_person] in person
        [telephone] by phone
       *[written] by written message
    }.
# $limit: an amount with its currency
authorization-within = What may turn up is not covered in full: that takes { $limit }.
# $amount, $sum: amounts with their currency
authorization-below = { $amount } is less than the estimate of { $sum }. Enter the full amount that was agreed to, or make the estimate smaller.
# $by: who gave the answer, as typed; $means: in_person, telephone or written
authorization-declined = Declined by { $by }, { $means ->
        [in_person] in person
        [telephone] by phone
       *[written] by written message
    }.
authorization-pending = Asked, no answer yet. Enter the answer when it has come.
# $has, $wants: codes of currencies
asked-currency = This is in { $has }, what was agreed to before in { $wants }. Enter both in the same currency.
# $has, $wants: codes of currencies
authorization-currency = The answer is in { $has }, the estimate in { $wants }. Enter both in the same currency.
authorization-no-person = Say who gave the answer.
authorization-no-means = Say how the answer was given: in person, by phone or by written message.
# $text: as typed
authorization-time = "{ $text }" is no time. Type it as 14:05, or with its day as 2026-03-02 14:05.
# $text: as typed
authorization-ahead = { $text } is after now. Correct the time; for an earlier day type the day before it.

## Numbers and units


## Spec sheets

# $what: what is missing, told by the loader
sheet-lacks = The sheet does not fit the checklist: { $what }.
sheet-no-coils = The list has no coil. Add each solenoid's coil with its limits.
sheet-coil-no-name = Say what the solenoid is called.
# $name: the coil
sheet-coil-twice = The coil "{ $name }" is listed twice. Give each a name of its own.
# $name: the coil; $min, $max: as they stand
sheet-coil-range = Coil "{ $name }": { $min } to { $max } is no range of a resistance. The lower limit is above 0 and not above the higher one.
# $min, $max: as they stand
sheet-range = The range { $min } to { $max } is reversed. Correct the sheet.
# $entry, $step: ids; $unit: the unit asked in; $found: the unit of the sheet's value
sheet-quantity = Entry "{ $entry }" of step "{ $step }" is asked in { $unit }; the sheet gives { $found }. Correct the sheet.
# $entry, $step: ids; $unit: as it stands; $known: the units that are known
sheet-entry-unit = Entry "{ $entry }" of step "{ $step }" asks in "{ $unit }", which is not a known unit. Write one of: { $known }.
# $positions: how many places stand on the sheet; $fasteners: how many fasteners
sheet-positions = { $positions } places for { $fasteners } fasteners: give each fastener its place, or none.

## Spec sheets while they are typed and checked

sheet-no-title = Say which vehicles the sheet is for.
sheet-no-source = Say where the value comes from: the document and its place in it.
sheet-no-number = A number is missing. Type it as it is in the source.
sheet-no-text = The text is missing. Type it as it is in the source.
# $known: the words it can be
sheet-no-word = Choose one of: { $known }.
# $word: as it stands; $known: the words it can be
sheet-word = "{ $word }" is not a choice here. Choose one of: { $known }.
# $text: as typed
# $least: 0 where there may be none
sheet-count = "{ $text }" is not how many there can be. Count them on the vehicle: { $least } to { $most }.
sheet-fasteners = "{ $text }" is not a number of fasteners. Count them: 1 or more.
# $temperature: the temperature, with its unit
sheet-twice = { $temperature } is entered twice. Keep one row for each temperature.
# $points: each temperature with its low and high mark
sheet-chart = The level belongs between the marks at { $points }; between them the marks run straight.
# $points: each temperature with its low and high mark
sheet-chart-crossed = The marks cross at { $points }: look where the low one is not below the high one.
sheet-unchanged = Nothing is changed, so there is nothing to keep.
sheet-check-none = Mark at least one value of this sheet as compared with its source.
# $what: the value's name; $name: who checked it
sheet-check-there = { $what }: checked by { $name } already.
# $what: the value's name; $name: who entered it
sheet-check-own = { $what }: { $name } entered this value, so a second person checks it.

## Starting a job

start-no-repair-order = The number of the repair order is missing.
# $what: name of the condition or fact; $value: how it is; $wants: how it must be
start-value = The vehicle cannot come in with { $what }: { $value }. This checklist needs { $wants }.
start-not-allowed = This checklist cannot begin with the vehicle as it is.

## Limits, shown beside an entry

# $limit: the limit; $name: what the sheet calls it
limit-at-most = at most { $limit } ({ $name })
# $limit: the limit; $name: what the sheet calls it
limit-at-least = at least { $limit } ({ $name })
# $low, $high: the limits; $name: what the sheet calls them
limit-within = { $low } to { $high } ({ $name })
# $minutes: how long, with its unit
limit-minutes = wait { $minutes }
# $stage: which stage, from 1; $target: the torque to reach; $lowest, $highest: what the sheet allows
limit-stage = stage { $stage }: { $target } ({ $lowest } to { $highest })
# $target: degrees to turn; $tolerance: to both sides; $bolts: how many fasteners
limit-angle = then { $target } ± { $tolerance }, each of { $bolts }
# $low, $high: the limits; $at: the temperature for which they stand; $name: what the sheet calls them
limit-coil = { $low } to { $high } at { $at } ({ $name })
# $unseen: what may be lost unseen
limit-unseen = ± { $unseen } unseen
# $from, $to: the temperatures between which the sheet's chart holds
limit-chart = fluid from { $from } to { $to }
# $items: how many of what
limit-count = { $items }

## What figures say

# $unit: of the numbers along an axis
figure-axis = { $unit }
# $labels: what the entries are called that are read by the chart
figure-level-title = { $labels }: the stick against temperature
# $time: when; $step: title of the step; $readings: each trace with its temperature, a dash for a dry stick; $class:
# below, in, above, unclear or not_reached; $counts: yes or no
figure-level-reading =
    { $time }, { $step }: { $readings }, { $class ->
        [below] below the band
        [in] in the band
        [above] above the band
        [not_reached] could not be brought into the band
       *[other] level not known from this
    }{ $counts ->
        [no] . It no longer counts: it was replaced, left or voided.
       *[yes] .
    }
# $values: what the stick showed; $unit: their unit, empty where each has its own; $time: when
figure-reading = { $values } { $unit }, { $time }
# $added: what was added before in all; $values: what the stick showed; $unit: their unit; $time: when
figure-reading-after = after { $added }: { $values } { $unit }, { $time }
# $target: the angle to turn
figure-angle-open = Then each turned { $target }: not turned yet.
# $target: the angle to turn; $turned: the degrees of each fastener; $time: when
figure-angle-turned = Then each turned { $target }: { $turned } °, { $time }.
# $time: when
figure-reading-dry = no trace, { $time }
# $step: title of the step; $label: what the control says
figure-bolts-title = { $step }: { $label }
# $fasteners: how many; $pattern: crosswise, star or spiral
figure-bolts-order =
    { $fasteners } fasteners, in each stage { $pattern ->
        [star] across the ring, by the numbers on the map.
        [spiral] from the middle outward in a spiral, by the numbers on the map.
       *[crosswise] from the middle out, each followed by the one opposite, by the numbers on the map.
    }
# $bolts: numbers with what is different about them
figure-bolts-noted = Different from the others: { $bolts }.
# $stage: which stage, from 1; $target: the torque to reach; $setting: what clicked; $time: when
figure-stage-clicked = Stage { $stage }, { $target }: clicked at { $setting }, { $time }.
# $stage: which stage, from 1; $target: the torque to reach
figure-stage-open = Stage { $stage }, { $target }: not clicked yet.
# $time: when; $settings: what clicked at each stage; $unit: its unit; $tool: what the shop calls the tool
figure-torque-was = { $time }: { $settings } { $unit } with { $tool }. It no longer counts: it was replaced, left or voided.
# $step: title of the step; $label: what the control says; $time: of the first reading
figure-cooling-title = { $step }: { $label }, from { $time } on
figure-cooling-heated = minutes since it was last heated
figure-cooling-first = minutes since the first reading
# $limit: the touch limit
figure-cooling-mark = touch limit { $limit }
# $time: when
figure-cooling-not-before = not before { $time }
# $readings: each with its time; $counted: how many of them count, taken since the part was last heated
figure-cooling-readings = Probed: { $readings }. { $counted ->
    [one] One reading counts
   *[other] { $counted } readings count
}.
# $limit: the touch limit; $ambient: ambient temperature
figure-cooling-limit = It may be touched at { $limit }; ambient temperature is { $ambient }.
# $class: below, cools, spread, too_few, rises, never or no_curve; $time: when, where it cools
figure-cooling-state = { $class ->
    [below] The last reading is at or below the limit.
    [cools] It cools. It is not below the limit before { $time }: probe again then.
    [spread] It cools. No time can be given: the readings scatter too much. Take more.
    [too_few] Too few readings for a curve: three are needed.
    [rises] A reading is hotter than one before it. Start over from the hottest.
    [never] The limit is at or below the ambient temperature: it is never reached.
   *[other] The readings give no cooling curve. Take more, a few minutes apart.
}
# $earliest, $likely: when
figure-cooling-between = The curve itself is at the limit at { $likely }; it could be at { $earliest } at the earliest.
# $limits: the sheet's value with the limits
figure-coil-title = Coils over temperature, by { $limits }
# $lowest, $highest: the sheet's limits; $at: the temperature for which they stand
figure-coil-limits = The sheet allows { $lowest } to { $highest } at { $at }; the band shows the limits corrected for temperature.
# $label: what the control says; $value: the coil at its own temperature
figure-coil-mark = { $label }, { $value }
# $time: when; $label: what the control says; $value: the coil at its own temperature, empty where the meter shows
# overload; $temperature: that temperature; $reference: the coil at the temperature of the limits; $at: that temperature;
# $class: in, in_as_read where the meter's error was not given, low, high, unclear, open or short
figure-coil-reading = { $time }, { $label }: { $class ->
    [open] open at { $temperature }, beyond the meter's range or the limits.
    [short] { $value } at { $temperature }: could be a short.
    [in] { $value } at { $temperature }, which is { $reference } at { $at }: in spec, errors included.
    [in_as_read] { $value } at { $temperature }, which is { $reference } at { $at }: in spec, meter error not given.
    [low] { $value } at { $temperature }, which is { $reference } at { $at }: below the lower limit.
    [high] { $value } at { $temperature }, which is { $reference } at { $at }: above the upper limit.
   *[other] { $value } at { $temperature }, which is { $reference } at { $at }: too close to call.
}
# $step: title of the step; $label: what the control says
figure-balance-title = { $step }: { $label }
figure-balance-drained = out
figure-balance-added = in
# $drained, $added: volumes at 15 °C
figure-balance-sums = Out { $drained }, in { $added }, both at 15 °C.
# $class: balanced, more_in or less_in; $difference: the difference without its sign; $uncertainty: how far it may be off
figure-balance-state = { $class ->
    [balanced] The difference of { $difference } lies within its own uncertainty of { $uncertainty }.
    [more_in] { $difference } more went in than came out; that may be off by { $uncertainty }.
   *[other] { $difference } less went in than came out; that may be off by { $uncertainty }.
}

## Events that cannot be written or read

# $kind: the kind of event
job-event-unwritable = Writing an event of the kind "{ $kind }" failed. Enter it again; if that fails too, report it.
# $kind: the kind
job-event-kind-unknown = Reading an event failed: the kind "{ $kind }" is not known. Use a newer version of Panside.
# $kind: the kind of event; $version: the version of its body; $newest: the newest version that can be read
job-event-version-unknown = Reading an event of the kind "{ $kind }" failed: its form { $version } is newer than { $newest }. Use a newer version of Panside.
# $kind: the kind of event; $version: the version of its body
job-event-body = Reading an event of the kind "{ $kind }" failed: its body is not of form { $version }. Verify the journal.

## Where the rules of the checklist and the record differ: said after the number of the event

# $id: as recorded
differs-no-step = the checklist has no step "{ $id }"
# $id: as recorded
differs-no-vehicle-action = the checklist has no vehicle action "{ $id }"
# $id: as recorded
differs-no-sign-off = the checklist has no sign-off "{ $id }"
# $id: as recorded
differs-no-gate = the checklist has no gate "{ $id }"
# $id, $value: as recorded
differs-no-value = the checklist has no condition "{ $id }" with the value "{ $value }"
# $action: what was done; $what: title of the step or vehicle action, text of the sign-off or name of the gate
differs-action =
    { $action ->
        [begin] the rules would not allow "{ $what }" to begin
        [leave] the rules would not allow "{ $what }" to be left
        [piece] the rules would not allow a piece off that the checklist does not know
        [done] the rules would not allow "{ $what }" to be done
        [skip] the rules would not allow "{ $what }" to be skipped
        [void] the rules would not allow "{ $what }" to be voided
        [correct] the rules would not allow "{ $what }" to be corrected
        [vehicle_action] the rules would not allow the vehicle action "{ $what }"
        [sign] the rules would not allow the sign-off "{ $what }"
        [expire] the rules would not allow { $what } to become too old
        [finish] the rules would not allow the job to be finished
       *[stop] the rules would not allow the job to be stopped
    }
# $what: name of the condition; $value: how it was seen
differs-observed = the rules would not allow { $what } to be seen as { $value }
# $what: name of the condition or fact
differs-not-given = { $what } is not given at the start
differs-start = the rules would not allow the job to start like this
differs-lost = what lapsed or became unknown is not what the rules say
# $step: title of the step
differs-entered = a value was entered at "{ $step }", which was not in progress
