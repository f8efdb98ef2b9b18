# The step sheet and what is done from it.
back = Back

sheet-no-step = No step is open. Choose one from Job steps.
sheet-below = More below
sheet-leave = Leave step
sheet-again = Do it again
sheet-give-up = Back to live entry
sheet-understood = OK
sheet-try-again = Try again
sheet-trouble = Not entered.
sheet-not-yet = Not yet.
sheet-and-more = { $count ->
    [one] And one more.
   *[other] And { $count } more.
}
sheet-why-not = Why not yet
sheet-sign-first = { $count ->
    [one] One signature is missing: sign above.
   *[other] { $count } signatures are missing: sign above.
}
sheet-sign-as = Sign: { $name }
sheet-signed-by = Signed: { $name }
sheet-sign-valid = signed { $time }, { $name }
sheet-sign-lapsed = must be signed again; was signed { $time }, { $name }
sheet-nobody-signs = { $role ->
    [second_person] No second person here. Add one in Shop setup.
    [service_writer] No service writer here. Add one in Shop setup.
   *[other] No technician here. Add one in Shop setup.
}
sheet-since = { $time }, { $who }

# $name: who signs what must be signed again
sheet-sign-again-as = Sign again: { $name }
sheet-nobody-setup = Go to Shop setup
# Above a vehicle action that brings what the step lacks
sheet-missing-action = needed here

sheet-main-begin = BEGIN
sheet-main-done = DONE
# $what: the answer that ends it
sheet-main-ends = END THE JOB: { $what }
sheet-main-stop = STOP AND CALL
sheet-main-enter-later = ENTER
sheet-main-correct = CORRECT
sheet-main-renew = SIGN AGAIN
sheet-main-explain = GIVE REASON
sheet-main-go-on = NEXT STEP
sheet-main-go-on-ended = RECORD

sheet-state-undecided = not decided yet
sheet-state-not-in-this-job = not in this job
sheet-state-waiting = waiting
sheet-state-open = can begin
sheet-state-in-progress = in progress
sheet-state-done = done
sheet-state-lapsed = sign again
sheet-state-voided = voided
sheet-state-skipped = skipped, with reason
sheet-state-missed = missed
sheet-mode-later = already done, entered now
sheet-mode-correction = corrected afterwards

sheet-stop-title = Stop and call
sheet-stop-explains = The job ends here. Make the vehicle safe to leave, then call the service writer.
sheet-stop-debris = Debris found: bigger repair needed
sheet-stop-declined = Customer declined
sheet-stop-part = Part missing
sheet-stop-unsafe = Vehicle not safe on this lift
sheet-void-title = Void { $number }, { $title }
sheet-void-explains = What was entered here stays readable but no longer counts. Steps that depend on it are voided too.
sheet-void-typing = Typing mistake
sheet-void-step = Wrong step
sheet-void-reading = Second reading was different
sheet-void-vehicle = Wrong vehicle
sheet-skip-title = Skip { $number }, { $title }
sheet-skip-explains = The step is left out of this job. Your reason goes in the record.
sheet-skip-vehicle = Not on this vehicle
sheet-skip-somebody = Done by someone else
sheet-skip-declined = Customer declined
sheet-missed-title = Missed: { $number }, { $title }
sheet-missed-explains = This step was added to the job after its phase had passed. Give the reason it was not done.
sheet-missed-findings = Not needed after the findings
sheet-missed-elsewhere = Checked during another step
sheet-missed-accessible = No longer accessible
