//! What this crate says to a person, as message ids with arguments. The sentences stand in `en/shop.ftl` of
//! `panside-messages`.

panside_messages::messages! {
    // Why nothing is written.
    shop_looks_like "shop-looks-like" (name, existing);
    shop_looks_like_left "shop-looks-like-left" (name, existing);
    shop_who_unknown "shop-who-unknown" ();
    shop_nobody_yet "shop-nobody-yet" ();
    shop_not_here "shop-not-here" (thing);
    shop_changed_meanwhile "shop-changed-meanwhile" (thing);
    shop_unchanged "shop-unchanged" (thing);
    shop_no_role "shop-no-role" (name);
    shop_lead_asked "shop-lead-asked" (leads);
    shop_last_lead "shop-last-lead" (name);
    shop_pin_of_other "shop-pin-of-other" ();
    shop_pin_witness "shop-pin-witness" ();
    shop_checklist_revision "shop-checklist-revision" (id, revision);
    shop_sheet_older "shop-sheet-older" (newest, id, revision);
    shop_sheet_base "shop-sheet-base" ();

    // Names that aren't taken.
    shop_name_missing "shop-name-missing" ();
    shop_name_too_long "shop-name-too-long" (chars, longest);
    shop_name_no_letter "shop-name-no-letter" (name);
    shop_name_no_letter_or_digit "shop-name-no-letter-or-digit" (name);
    shop_name_hidden "shop-name-hidden" (what, code, place);
    shop_hidden_control "shop-hidden-control" ();
    shop_hidden_direction "shop-hidden-direction" ();
    shop_hidden_invisible "shop-hidden-invisible" ();
    shop_hidden_unassigned "shop-hidden-unassigned" ();

    // The things of a shop.
    shop_thing_person "shop-thing-person" ();
    shop_thing_pin "shop-thing-pin" ();
    shop_thing_tool "shop-thing-tool" ();
    shop_thing_sheet "shop-thing-sheet" ();
    shop_thing_checklist "shop-thing-checklist" ();
    shop_thing_device "shop-thing-device" ();
    shop_thing_value "shop-thing-value" ();

    // What has to be settled.
    shop_both_sides "shop-both-sides" (thing, name, sides);
    shop_side "shop-side" (who, device, changed);
    shop_next_side "shop-next-side" (start, next);
    shop_next_piece "shop-next-piece" (start, next);
    shop_and "shop-and" (start, last);
    shop_said_name "shop-said-name" (name);
    shop_said_roles "shop-said-roles" (roles);
    shop_said_no_roles "shop-said-no-roles" ();
    shop_role "shop-role" (role);
    shop_said_lead "shop-said-lead" ();
    shop_said_no_lead "shop-said-no-lead" ();
    shop_said_range "shop-said-range" (lowest, highest, unit);
    shop_said_calibration "shop-said-calibration" (due);
    shop_said_content "shop-said-content" (revision);
    shop_said_pin "shop-said-pin" ();
    shop_said_value "shop-said-value" (is, source);
    shop_said_removed "shop-said-removed" ();
    shop_said_nothing "shop-said-nothing" ();
    shop_device "shop-device" (id);
    shop_alike "shop-alike" (name, other, thing);
    shop_stand_in "shop-stand-in" (name);
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("shop", super::MESSAGES);
}
