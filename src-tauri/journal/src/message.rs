//! What this crate says to a person, as message ids with arguments. The sentences stand in `en/journal.ftl` of
//! `panside-messages`.

panside_messages::messages! {
    journal_number "journal-number" (event, field);
    journal_id "journal-id" (event);
    journal_empty "journal-empty" (event);
    journal_body "journal-body" (event);
    journal_unwritable "journal-unwritable" (event);
    journal_line "journal-line" ();
    journal_spelling "journal-spelling" (event);
    journal_hash_text "journal-hash-text" (text);
    journal_format_unknown "journal-format-unknown" (event, found);
    journal_body_altered "journal-body-altered" (event);
    journal_hash_differs "journal-hash-differs" (event, kept, found);
    journal_sequence_gap "journal-sequence-gap" (event, found, chain, expected);
    journal_previous_differs "journal-previous-differs" (event, chain, named, found);
    journal_other_device "journal-other-device" (event, found, expected);
    journal_other_subject "journal-other-subject" (event, found, expected);
    journal_shop_of_other "journal-shop-of-other" (event);
    journal_no_subject "journal-no-subject" (text);
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("journal", super::MESSAGES);
}
