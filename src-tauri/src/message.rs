//! What the window says itself, as message ids with arguments. The sentences stand in `en/panside.ftl` of
//! `panside-messages`; the page's own words in `en/window`.

use panside_messages::Speaker;

panside_messages::messages! {
    panside_not_opened "panside-not-opened" ();
    panside_shut_meanwhile "panside-shut-meanwhile" ();
    panside_no_demo_clock "panside-no-demo-clock" ();
    panside_reading "panside-reading" ();
    panside_broke "panside-broke" (why);
    panside_photo_bare "panside-photo-bare" ();
    panside_checklist_bare "panside-checklist-bare" ();
    panside_sheet_bare "panside-sheet-bare" ();
    panside_unknown_option "panside-unknown-option" (option);
    panside_no_window "panside-no-window" (why);
    panside_shut_unsettled "panside-shut-unsettled" (why);
    panside_backups_unseen "panside-backups-unseen" (why);
    panside_restored_why "panside-restored-why" ();
}

/// Who speaks to the window's person.
pub(crate) fn speaker() -> &'static Speaker {
    Speaker::english()
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("panside", super::MESSAGES);
}
