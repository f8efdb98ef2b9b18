# Entries and the keypad.

## On a row and above a pad

entry-optional = optional
entry-empty = not entered
entry-entered = entered
entry-not-yet = not yet
entry-typed = typed, not entered
entry-running = running
entry-over = time is up
entry-begun = begun
entry-enter = ENTER
entry-entering = Writing …

## What is said beside Enter

entry-says-not-yet = Not yet.
entry-keeps-in-progress = You can enter it; the step stays in progress.
entry-says-ends = This ends the job.
# At an answer that ends the job
entry-ends = ends the job
entry-nobody = Choose who is working first.
entry-again = Something else is still being saved. Try again.
entry-missing-tool = Choose the torque wrench.
entry-missing-click = Tap what has clicked, or type it.
entry-missing-text = Nothing is typed yet.
entry-missing-photo = No photo yet.
entry-missing-choice = Tap one of the answers.
entry-missing-answer = Tap what the customer answered.
entry-missing-several = Tap all that were found, or none of these.
entry-none-of-these = None of these
entry-missing-decision = Take what the table says, or go against it.

## Keypad

entry-key-decimal = .
entry-key-decimal-name = decimal point
entry-key-sign = −
entry-key-sign-name = minus
entry-key-delete = delete
entry-key-clear = clear
# $unit: the unit that holds; $next: the one after it
entry-key-unit = Unit { $unit }. Change to { $next }
# $value: in the other unit, with it
entry-other = is { $value }

## Fluid level

entry-no-trace = no trace
# $number: which reading
entry-temperature = { $number } · fluid
# $number: which reading
entry-trace = { $number } · stick
entry-another-reading = one more reading
# $number: which reading
entry-remove-reading = remove reading { $number }
entry-confirm-no-trace = Stick fully seated, temperature and idle checked again, still dry
entry-yes = yes
entry-no = no

entry-give-up = It can't be brought into its band
entry-give-up-reason = Why it can't be done
entry-give-up-word-leaks = leaks as fast as it is filled
entry-give-up-word-noise = the engine can't be run any longer

## Coils

entry-coil-shows = Meter shows
entry-coil-overload = OL
entry-coil-temperature = Coil temperature
entry-coil-leads = Lead resistance, if not zeroed
entry-coil-percent = Meter accuracy ±, percent
entry-coil-digits = and ±, last digits

## Hot parts

entry-probe-value = Probe shows
entry-probe-ambient = Ambient temperature
entry-probe-set-to = Emissivity setting
entry-probe-contact = With contact probe
entry-probe-infrared = With infrared
entry-probe-surface = Surface
entry-probe-surface-coated = coated, dull
entry-probe-surface-oxidised = oxidized
entry-probe-surface-rusty = red rust
entry-probe-surface-bright = bare, bright

## Fluid balance

entry-balance-can = New fluid's temperature
entry-balance-explain = Say where the fluid is
entry-balance-reason = Where it is
entry-balance-word-filter = in the new filter
entry-balance-word-splash = splashed, in rags
entry-balance-word-cooler = in cooler and lines
entry-balance-word-jug = not all of it was caught

## Decisions

# Where all is entered in one go
entry-decision-open = The table is looked up when all is entered. Choose what it comes to.
entry-decision-against = Go against it …
# $class: what is decided against the table
entry-decision-otherwise = Against the table: { $class }
entry-decision-reason = Why not what the table says
entry-decision-word-again = looked at again, it is not so
entry-decision-word-known = known on this vehicle
entry-decision-word-agreed = agreed with the customer
entry-decision-word-doubt = the reading is doubtful

## Counts

# $count: how many are expected
entry-count-of = of { $count }
entry-count-none = not counted
# $item: name of the item
entry-one-less = one less: { $item }
entry-one-more = one more: { $item }
# $count: how many; $item: name of the item
entry-all = all { $count }
entry-account = Say where the missing ones are
entry-account-reason = Where they are
entry-account-by = Who says so
entry-account-keep = Keep this
entry-account-drop = Remove this
entry-account-word-broke = broke off, the rest is still in
entry-account-word-lost = lost, new one ordered
entry-account-word-before = was missing before this job
entry-account-word-bench = on the bench, in the bag

## Torque

# $value: what the sheet wants, with its unit
entry-clicked = clicked at { $value }
# $stage: which stage, from 1
entry-stage = Stage { $stage }
# $bolt: which fastener, from 1
entry-angle = Bolt { $bolt } turned
entry-adapter = Crowfoot
entry-adapter-tool = Wrench, grip to drive
entry-adapter-length = Crowfoot, drive to bolt
entry-adapter-angle = Angle between them
entry-exception = Use this wrench anyway
entry-exception-reason = Why it was used anyway
entry-exception-word-only = no other wrench here
entry-exception-word-calibrated = calibration is booked
entry-exception-word-reach = no other wrench reaches the bolt
entry-tool-choose = Choose the torque wrench
# $min, $max, $unit: its range; $due: last day of its calibration
entry-tool-range = { $min } to { $max } { $unit } · calibrated until { $due }
entry-tool-new = Another wrench
entry-tool-name = What the shop calls it
entry-tool-min = Lowest torque
entry-tool-max = Highest torque
entry-tool-class-percent = Class: ± percent, if given
entry-tool-certificate = Certificate number
entry-tool-calibrated-on = Calibrated on, as 2026-03-01
entry-tool-calibration-due = Calibrated until, as 2027-03-01
entry-tool-unit = Unit of both
entry-tool-keep = Save this wrench

## Photos

entry-photo-is-taken = taken
entry-photo-take = Take the photo
entry-photo-another = Retake the photo
entry-photo-here = Or drop or paste a picture here.
entry-photo-must-show = Must show:
entry-photo-scale = with a scale beside it
# $name: name of the file; $size: its size in megabytes
entry-photo-taking = Loading { $name }, { $size } MB …
entry-photo-no-picture = What was pasted or dropped is not a file. Take the photo, or choose its file.
entry-photo-none-shown = The picture can't be shown: { $why }

## Scans

entry-scan-vin = 17 letters and digits
entry-scan-codes = codes with spaces between
entry-scan-text = text
entry-no-codes = No codes
# $text: a number that may be meant
entry-take = Use { $text }

## Timers

entry-timer-waited = waited
entry-timer-begin = Begin the step first: the time starts with it.
entry-timer-left = left
entry-timer-up = Time is up.

## Notes

entry-note-words = Tap to write

entry-map = On the map
entry-map-stage = Stage { $stage }: { $target }
entry-map-clicked = clicked at { $value }
entry-map-now = now, starting at 1
entry-map-bolts = { $done } of { $all }
entry-map-later = then
entry-map-all = All { $count } clicked at { $value }
entry-map-bolt = Bolt { $number } of { $all } clicked at { $value }
entry-map-angle = Then each turned { $target }
entry-map-turned = Bolt { $number } of { $all } turned { $value }
entry-map-single = Bolt by bolt
entry-map-type = Type it, crowfoot, override
entry-map-back = Undo

## Estimates

entry-estimate-add-parts = + part
entry-estimate-add-labor = + labor
entry-estimate-add-may-turn-up = + may turn up
entry-estimate-parts = Part
entry-estimate-labor = Labor
entry-estimate-may-turn-up = May turn up
entry-estimate-number = Part number, if known
entry-estimate-quantity = How many
entry-estimate-price = Price of one
entry-estimate-hours = Hours
entry-estimate-hour = h
entry-estimate-rate = Price of an hour
entry-estimate-up-to = At most
entry-estimate-remove = Take this line out
entry-estimate-no-name = no name yet

## The customer's answer

entry-answer-agreed = go ahead
entry-answer-declined = no
entry-answer-pending = no answer yet
entry-answer-amount = Amount before tax
entry-answer-amount-typed = The amount is right
# $amount: what the estimate comes to, with its currency
entry-answer-take-sum = estimate: { $amount }
# $amount: the same with all that may turn up
entry-answer-take-limit = with what may turn up: { $amount }
entry-answer-in-person = in person
entry-answer-telephone = by phone
entry-answer-written = by written message
entry-answer-given-by = Who gave it
entry-answer-given-at = When, if not now (14:05)
