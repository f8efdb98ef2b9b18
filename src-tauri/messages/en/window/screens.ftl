# The other screens: bay, new job, photos, record; and what is laid over the step sheet.
screens-places = Where to go
screens-place-job = Job
screens-place-bay = Bay
screens-place-photos = Photos
screens-place-figures = Figures
screens-place-record = Record
screens-place-setup = Shop setup
screens-place-new_job = New job
# $screen: where one came from
screens-back-to = Back to: { $screen }
screens-no-job-open = No job is open. Choose one in Bay.
screens-side = Actions
screens-demo = demo values, not for a vehicle
screens-role = { $role ->
    [second_person] second person
    [service_writer] service writer
   *[other] technician
}

screens-bay = Bay
screens-bay-on-tablet = jobs on this tablet
screens-bay-none = No job on this tablet yet.
screens-bay-nobody = No one is on this tablet's list yet. A job needs a person: add who works here first.
screens-bay-first-person = Add who works here
screens-bay-open = Open
screens-bay-ended = Ended { $day }
screens-store = Problems found in the job data
screens-go-on = Go on from here
screens-go-on-explains = Restore a backup first if there is one. Going on keeps what is shown here; lost entries stay lost, and the job data says where it went on.
screens-job-ended = ended
screens-job-open = open
screens-job-here = open, shown now
screens-job-since = since { $day }
screens-job-began = started { $day }
screens-working = Working now
screens-works-now = working now
screens-nobody = No one is on the list yet
screens-somebody-else = Switch person
screens-new-job = New job
screens-new-job-on = New job, continue

screens-who-title = Who is working now?
screens-who-none = No one is on this tablet's list yet. Add the people who work here in Shop setup.
screens-who-setup = People, in Shop setup

screens-new-title = New job
screens-new-kept = What you fill in is kept until the job is started.
screens-new-number = Repair order
screens-new-label = Job name
screens-new-checklist = Checklist
screens-new-sheet = Spec sheet
screens-new-comes-in = At check-in: { $name }
screens-new-who = Who is working
screens-new-revision = revision { $revision }
screens-new-steps = { $count ->
    [one] 1 step
   *[other] { $count } steps
}
screens-proved = proved
screens-unproved = not proved yet
screens-new-start = START
screens-new-nothing-offered = No checklist is built into this program.
# $names: what people read for the values
screens-new-shop-lacks = The shop has no value yet for: { $names }. Set it once under Shop values.
screens-new-no-sheet = No spec sheet fits this checklist.
screens-new-nobody = No one is on this tablet's list. Add who is working in Shop setup.
screens-new-not-proved = The checklist must be proved before a job can start with it. The proof runs by itself.
screens-new-proof-failed = No job can start with a checklist that is not proved. Prove it again.
screens-digits = Digits
screens-digit-back = Delete the last digit
screens-proof = Proof of the checklist
screens-proof-explains = Every allowed order of steps is checked for dangers. You can do other things meanwhile.
screens-proof-proved = Proved on this tablet: no allowed order of steps leads to a danger, even if one entry is voided or one vehicle status corrected.
screens-proof-failed = It could not be proved. No job can start with it.
screens-proof-other = Its revision { $revision } is proved: choose that one to start now.
screens-proof-again = Prove again
screens-proof-states = { $count ->
    [one] 1 state
   *[other] { NUMBER($count) } states
}
screens-proof-seconds = { $count ->
    [one] 1 second
   *[other] { $count } seconds
}

screens-photos = Photos
screens-photos-count = { $count ->
    [one] , 1 photo
   *[other] , { $count } photos
}
screens-photos-none = No photo has been taken in this job yet.
screens-photo-voided = voided or replaced: does not count
screens-photo-previous = Previous
screens-photo-next = Next
# Which photo is shown, of how many.
screens-photo-at = { $number } of { $of }
screens-photo-pixels = Actual pixels
screens-photo-fit = Fit to screen

screens-record = Record
screens-record-state = Status
screens-record-open = The job is open.
screens-record-ending = The job is being stopped; the vehicle is being made safe to leave.
screens-record-finished = The job is finished.
screens-record-stopped = The job was stopped.
screens-record-ended-by = { $day }, { $time }, { $who }.
screens-record-complete = Nothing is missing.
screens-record-concern = Concern
screens-record-cause = Cause
screens-record-correction = Correction
screens-record-not-written = Not written yet.
screens-record-departures = Skipped, missed or voided, with the reason
screens-record-tally = Parts removed and refitted
screens-record-piece = part
screens-record-off = removed
screens-record-back = refitted
screens-record-new = new
screens-record-left = still off
screens-record-time = Time
screens-record-whole = start to end
screens-record-unplanned = unplanned work
screens-record-waiting = waiting
screens-record-journal = { $events } entries in the journal, { $photos } photos.
screens-record-onward = Show what is missing
screens-record-finish = Finish the job
screens-record-save = Save the record
screens-record-save-again = Save it again
screens-record-save-customer = Customer's copy
screens-record-save-everything = Save with every reading
screens-record-saving = The record is being saved with its photos.
screens-record-saved = Saved here:

screens-reason-text = In your own words
screens-reason-missing = Give a reason: tap one or write it.
screens-reason-kept = The reason is kept. Make the vehicle safe to leave first.
screens-reason-enter = ENTER
screens-reason-must-hold = Needed first:

screens-finish-title = Finish the job
screens-finish-explains = The job ends here, and nothing more can be entered in it. What is entered stays as it is. Finish it?
screens-finish-do = FINISH

screens-renew-title = Signatures to renew
screens-renew-since = Must be signed again since { $time }, because of an entry by { $who }:
screens-renew-signer = { $role ->
    [second_person] { $name } signs, as second person.
    [service_writer] { $name } signs, as service writer.
   *[other] { $name } signs.
}
screens-renew-other = Someone else signs
screens-renew-sign = { $count ->
    [0] Sign again
    [one] Sign again
   *[other] Sign all { $count } again
}
screens-renew-none = Nothing can be signed again now.
screens-renew-not-now = Not now

screens-observe-title = Correct the vehicle status
screens-observe-explains = Report what you see. What it makes unsafe is blocked until fixed.
screens-observe-what = Correct: { $name }
screens-observe-shown = { $name } is shown as { $value }. It is:
screens-observe-choose = Choose what you see.
screens-observe-how = Say how it came about: tap a reason or write it.
screens-observe-found = Found it like this
screens-observe-somebody = Someone else did it
screens-observe-broke = It broke or slipped
screens-observe-entry = Wrong entry before

screens-more-title = More
screens-more-go = Go to
screens-more-step = Step { $number }
screens-more-job = The job
screens-more-skip = Skip this step
screens-more-void = Void this entry
screens-more-later = Already done: enter it now
screens-more-observe = Correct the vehicle status
screens-more-renew = Signatures to renew
screens-more-stop = Stop and call
screens-light = Light screen
screens-dark = Dark screen
# The side of the main button and of a pad's keys; a press changes it.
screens-setup-hand = { $left ->
    [true] Main button: left
   *[other] Main button: right
}

screens-figures = Figures
screens-figures-larger = Show larger: { $title }
screens-figures-smaller = Smaller
screens-figures-none = Nothing that can be drawn has been measured in this job yet.

screens-more-turned-up = Found something
screens-turned-title = Found something
screens-turned-all = All that turned up
screens-turned-found = Take down what was found
screens-turned-ask = Ask the customer again
screens-turned-piece = One more piece off
screens-turned-answer = The customer's answer
screens-turned-back = Back on
screens-turned-gone = Not coming back
screens-turned-dealt-with = Dealt with
screens-turned-without = Go on without it
screens-turned-take-back = Take back
screens-turned-to-answer = Answer
screens-turned-to-without = Go on without it
screens-turned-to-back = Back on
screens-turned-to-gone = Not coming back
screens-turned-to-dealt-with = Dealt with
screens-turned-to-ask = Ask the customer
screens-turned-to-take-back = Take back
screens-turned-now = Now, in this job
screens-turned-soon = Soon, recommended
screens-turned-tell = Tell the customer
screens-turned-what = What
screens-turned-where = Where
screens-turned-why = In words
screens-turned-piece-name = Which piece
screens-turned-torque = Torque, if any
screens-turned-lines = Parts and labor on top
screens-turned-photo = Add a photo
screens-turned-photo-out = Take out
screens-turned-fewer = One fewer
screens-turned-more = One more
# $title: of the step
screens-turned-waits = "{ $title }" can't be done before the answer is in.
# $off: how many are off; $count: how many came off
screens-turned-off = { $off } of { $count } off
screens-turned-settled = dealt with
screens-turned-taken-back = taken back
screens-turned-is-open = Customer asked, no answer yet
screens-turned-is-below = Agreed to less
screens-turned-is-declined = Customer declined
screens-turned-is-agreed = agreed
screens-turned-is-without-it = goes on without it
# Words to tap, with a comma between them.
screens-turned-words-found = rusted solid, leaking, cracked, torn, worn, loose, missing, broken
# Words to tap, with a comma between them.
screens-turned-words-piece = bracket, bolt, nut, line clamp, clip, cover, hose, connector
# Words to tap, with a comma between them.
screens-turned-words-parts = nut, bolt, clamp, hose, gasket
# Words to tap, with a comma between them.
screens-turned-words-labor = split and replace, clean, replace
# Words to tap, with a comma between them.
screens-turned-words-givers = owner, driver
# Words to tap, with a comma between them.
screens-turned-words-torque = hand tight, by feel, new fastener
# Words to tap, with a comma between them.
screens-turned-words-gone = replaced by a new one, broken
# Words to tap, with a comma between them.
screens-turned-words-dealt-with = replaced, fastened, cleaned
# Words to tap, with a comma between them.
screens-turned-words-without = not needed for this job, holds as it is
# Words to tap, with a comma between them.
screens-turned-words-take-back = entered by mistake, another vehicle
