# The other screens: bay, new job, photos, record; and what is laid over the step sheet.
screens-places = Where to go
screens-place-job = Job
screens-place-bay = Bay
screens-place-photos = Photos
screens-place-figures = Figures
screens-place-record = Record
screens-place-kit = Kit
screens-no-job-open = No job is open. Choose one in Bay.
screens-side = What can be done
screens-demo = demo values, not for a vehicle
screens-role = { $role ->
    [second_person] second person
    [service_writer] service writer
   *[other] technician
}

screens-bay = Bay
screens-bay-on-tablet = jobs on this tablet
screens-bay-none = No job on this tablet yet.
screens-store = Problems found in the job data
screens-go-on = Go on from here
screens-go-on-explains = Restore a backup first if there is one. Going on keeps what is shown here; entries that are lost stay lost, and the job data says where it went on.
screens-job-ended = ended
screens-job-open = open
screens-job-here = open, on the bench
screens-job-events = { $count ->
    [one] 1 entry
   *[other] { $count } entries
}
screens-working = Works now
screens-works-now = works now
screens-nobody = Nobody is named yet
screens-somebody-else = Somebody else works
screens-new-job = New job
screens-new-job-on = New job, go on

screens-who-title = Who works now?
screens-who-none = Nobody is named on this tablet yet. Name who works here in Kit.
screens-who-kit = Names, in Kit

screens-new-title = New job
screens-new-kept = What is filled in is kept until the job is started.
screens-new-number = Repair order
screens-new-label = What it is called
screens-new-checklist = Checklist
screens-new-sheet = Spec sheet
screens-new-comes-in = Comes in with: { $name }
screens-new-who = Who works
screens-new-revision = revision { $revision }
screens-new-steps = { $count ->
    [one] 1 step
   *[other] { $count } steps
}
screens-proved = proved
screens-unproved = not proved yet
screens-new-start = START
screens-new-nothing-offered = No checklist is built into this program.
screens-new-no-sheet = No spec sheet fits this checklist.
screens-new-nobody = Nobody is named on this tablet. Name who works, in Kit.
screens-new-not-proved = The checklist must be proved before a job starts with it. It goes on by itself.
screens-new-proof-failed = No job starts with a checklist that is not proved. Prove it again.
screens-digits = Digits
screens-digit-back = Take the last one away
screens-proof = Proof of the checklist
screens-proof-explains = Every allowed order of steps is tried, whether one leads into a danger. You can go elsewhere meanwhile.
screens-proof-proved = Proved on this tablet: no allowed order of steps leads into a danger, with one entry struck or one thing found otherwise at most.
screens-proof-failed = It could not be proved. No job starts with it.
screens-proof-other = Revision { $revision } of it is proved: choose that one to start now.
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
screens-photos-none = No photo was taken in this job yet.
screens-photo-struck = struck or replaced: it does not count
screens-photo-before = Before
screens-photo-after = After
screens-photo-pixels = Pixel by pixel
screens-photo-fit = Fit to the glass

screens-record = Record
screens-record-state = How it stands
screens-record-open = The job is open.
screens-record-ending = The job is being stopped; the vehicle is made safe to leave.
screens-record-finished = The job is finished.
screens-record-stopped = The job was stopped.
screens-record-ended-by = { $day }, { $time }, { $who }.
screens-record-complete = Nothing is missing.
screens-record-concern = Concern
screens-record-cause = Cause
screens-record-correction = Correction
screens-record-not-written = Not written yet.
screens-record-departures = Set aside, missed or struck, with the reason
screens-record-tally = Off and on again
screens-record-piece = pieces
screens-record-off = came off
screens-record-back = went back
screens-record-new = new ones
screens-record-left = still off
screens-record-time = Time
screens-record-whole = from start to end
screens-record-unplanned = unplanned work
screens-record-waiting = waiting
screens-record-journal = { $events } entries in the journal, { $photos } photos.
screens-record-onward = Go on to what is missing
screens-record-finish = Finish the job
screens-record-save = Save the record
screens-record-save-again = Save it again
screens-record-saving = The record is being written, with its photos.
screens-record-saved = Saved. It lies here:

screens-reason-text = In your own words
screens-reason-missing = Give a reason: tap one or write it.
screens-reason-enter = ENTER
screens-reason-must-hold = This must hold first:

screens-finish-title = Finish the job
screens-finish-explains = The job ends here, and nothing more can be entered in it. What is written stays as it is. Finish it?
screens-finish-do = FINISH

screens-renew-title = Sign again what has lapsed
screens-renew-since = Lapsed { $time }, by what { $who } entered:
screens-renew-signer = { $role ->
    [second_person] { $name } signs, as second person.
    [service_writer] { $name } signs, as service writer.
   *[other] { $name } signs.
}
screens-renew-other = Somebody else signs
screens-renew-sign = { $count ->
    [0] Sign again
    [one] Sign again
   *[other] Sign all { $count } again
}
screens-renew-none = Nothing that has lapsed can be signed now.
screens-renew-not-now = Not now

screens-observe-title = The vehicle is not as shown
screens-observe-explains = Say what is otherwise. A fact is never refused; what it makes unsafe is closed until it is put right.
screens-observe-what = Not as shown: { $name }
screens-observe-shown = { $name } is not { $value } but
screens-observe-choose = Choose what it is.
screens-observe-how = Say how it came to that: tap a word or write it.
screens-observe-words =
    Found it like this
    Somebody else did it
    It gave way
    Entered wrong before

screens-more-title = More
screens-more-go = Go to
screens-more-step = Step { $number }
screens-more-job = The job
screens-more-aside = Set it aside
screens-more-strike = Strike it
screens-more-later = Enter it as done before
screens-more-observe = The vehicle is not as shown
screens-more-renew = Sign again what has lapsed
screens-more-stop = Stop and call
screens-light = Light glass
screens-dark = Dark glass

screens-figures = Figures
screens-figures-larger = Show larger: { $title }
screens-figures-smaller = Smaller
screens-figures-none = Nothing that is drawn has been measured in this job yet.
