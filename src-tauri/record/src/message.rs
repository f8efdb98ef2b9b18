//! What this crate says to a person, as message ids with arguments. The sentences stand in `en/record.ftl` of
//! `panside-messages`.

panside_messages::messages! {
    record_unwritable "record-unwritable" (repair_order);
    record_proof "record-proof" (checklist);
    record_pdf "record-pdf" (repair_order, why);
    record_font "record-font" ();
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("record", super::MESSAGES);
}
