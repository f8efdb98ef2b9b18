//! What this crate says to a person, as message ids with arguments. The sentences stand in `en/photo.ftl` of
//! `panside-messages`.

panside_messages::messages! {
    photo_empty "photo-empty" ();
    photo_too_many_bytes "photo-too-many-bytes" (bytes, limit);
    photo_not_a_photo "photo-not-a-photo" (found);
    photo_cut_off "photo-cut-off" (kind);
    photo_damaged "photo-damaged" (kind, what);
    photo_too_many_pixels "photo-too-many-pixels" (width, height, pixels, limit);
    photo_side_too_long "photo-side-too-long" (width, height, limit);
    photo_undecodable "photo-undecodable" (kind);
    photo_preparing "photo-preparing" ();
    photo_found_gif "photo-found-gif" ();
    photo_found_webp "photo-found-webp" ();
    photo_found_pdf "photo-found-pdf" ();
    photo_found_bmp "photo-found-bmp" ();
    photo_found_tiff "photo-found-tiff" ();
    photo_found_heic_or_video "photo-found-heic-or-video" ();
    photo_found_zip "photo-found-zip" ();
    photo_found_text "photo-found-text" ();
    photo_found_unknown "photo-found-unknown" ();
    photo_damage_no_header "photo-damage-no-header" ();
    photo_damage_profile_too_large "photo-damage-profile-too-large" ();
    photo_damage_checksum "photo-damage-checksum" ();
    photo_damage_no_size "photo-damage-no-size" ();
    photo_damage_size_zero "photo-damage-size-zero" ();
    photo_damage_too_many_scans "photo-damage-too-many-scans" ();
    photo_damage_size_twice "photo-damage-size-twice" ();
    photo_damage_no_picture "photo-damage-no-picture" ();
    photo_damage_frame_too_short "photo-damage-frame-too-short" ();
    photo_damage_segment_length "photo-damage-segment-length" ();
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("photo", super::MESSAGES);
}
