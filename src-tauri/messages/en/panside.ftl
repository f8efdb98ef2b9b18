# What the window says itself, beside what the core and the page say.

panside-not-opened = The store was not opened.
panside-shut-meanwhile = The store is shut while its files are worked on. Try again when that is done.
panside-no-demo-clock = Time goes its own way here: the window has no demo clock.
panside-reading = reading
# $why: what the system said
panside-broke = Something broke inside Panside: { $why }. What was saved is safe; close the window and open it again.
panside-photo-bare = A photo came without its bytes or its job. Take it again.
panside-checklist-bare = A checklist came without its bytes. Choose the file again.
panside-sheet-bare = A spec sheet came without its bytes. Choose the file again.
# $option: as typed
panside-unknown-option = The window does not know "{ $option }". It takes --store FOLDER and --demo-clock.
# $why: what the system said
panside-no-window = Panside can't open its window: { $why }
# $why: a sentence
panside-shut-unsettled = Panside shut its store, which was not put in order before: { $why }
# $why: a sentence
panside-backups-unseen = Panside could not look after its backups: { $why }
panside-restored-why = restored from a backup in the window
