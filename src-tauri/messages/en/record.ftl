# Why a record or a part of it can't be made.

# $repair_order: the repair order
record-unwritable = Writing the record of { $repair_order } as JSON failed. Make it again; if that fails too, report it.
# $checklist: hash of the checklist
record-proof = Reading the kept proof of the checklist { $checklist } failed. Prove the checklist again.
# $repair_order: the repair order; $why: what the PDF writer said
record-pdf = Writing the record of { $repair_order } as PDF failed: { $why }. Take it as JSON or as text, which are complete, and report it.
record-font = a font of the program cannot be read
