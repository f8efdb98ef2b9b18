//! What `figure` says, as message ids with arguments. The sentences stand in `en/cli.ftl` of `panside-messages`.

panside_messages::messages! {
    // What is listed.
    cli_values "cli-values" ();
    cli_perhaps "cli-perhaps" (is);
    cli_often "cli-often" (is);
    cli_perhaps_often "cli-perhaps-often" (is);

    // Keys of several figures.
    cli_key_reading "cli-key-reading" ();
    cli_key_mark "cli-key-mark" ();
    cli_key_temp "cli-key-temp" ();
    cli_key_chart "cli-key-chart" ();
    cli_key_agree "cli-key-agree" ();
    cli_key_floor "cli-key-floor" ();
    cli_key_idle "cli-key-idle" ();
    cli_key_park "cli-key-park" ();
    cli_key_cycled "cli-key-cycled" ();
    cli_key_started "cli-key-started" ();
    cli_key_changed "cli-key-changed" ();
    cli_key_now "cli-key-now" ();
    cli_key_addition "cli-key-addition" ();
    cli_key_tool "cli-key-tool" ();
    cli_key_class "cli-key-class" ();
    cli_key_due "cli-key-due" ();
    cli_key_calibrated "cli-key-calibrated" ();
    cli_key_months "cli-key-months" ();
    cli_key_on "cli-key-on" ();
    cli_key_ambient "cli-key-ambient" ();

    // Keys of the figure "level".
    cli_level "cli-level" ();

    // Keys of the figure "diagnosis".
    cli_diagnosis "cli-diagnosis" ();
    cli_diagnosis_level "cli-diagnosis-level" ();
    cli_diagnosis_tried "cli-diagnosis-tried" ();

    // Keys of the figure "topup".
    cli_topup "cli-topup" ();
    cli_topup_gain "cli-topup-gain" ();
    cli_topup_share "cli-topup-share" ();
    cli_topup_pour "cli-topup-pour" ();

    // Keys of the figure "gain".
    cli_gain "cli-gain" ();

    // Keys of the figure "refill".
    cli_refill "cli-refill" ();
    cli_refill_drained "cli-refill-drained" ();
    cli_refill_poured "cli-refill-poured" ();
    cli_refill_density "cli-refill-density" ();
    cli_refill_holdback "cli-refill-holdback" ();
    cli_refill_temp "cli-refill-temp" ();
    cli_refill_gain "cli-refill-gain" ();

    // Keys of the figure "balance".
    cli_balance "cli-balance" ();
    cli_balance_drained "cli-balance-drained" ();
    cli_balance_added "cli-balance-added" ();
    cli_balance_density "cli-balance-density" ();
    cli_balance_unseen "cli-balance-unseen" ();
    cli_balance_capacity "cli-balance-capacity" ();

    // Keys of the figure "coil".
    cli_coil "cli-coil" ();
    cli_coil_ohms "cli-coil-ohms" ();
    cli_coil_temp "cli-coil-temp" ();
    cli_coil_tempoff "cli-coil-tempoff" ();
    cli_coil_leads "cli-coil-leads" ();
    cli_coil_meter "cli-coil-meter" ();
    cli_coil_limits "cli-coil-limits" ();
    cli_coil_at "cli-coil-at" ();

    // Keys of the figure "code".
    cli_code "cli-code" ();
    cli_code_codes "cli-code-codes" ();
    cli_code_bytes "cli-code-bytes" ();

    // Keys of the figure "vin".
    cli_vin "cli-vin" ();
    cli_vin_vin "cli-vin-vin" ();

    // Keys of the figure "torque".
    cli_torque "cli-torque" ();
    cli_torque_torque "cli-torque-torque" ();
    cli_torque_target "cli-torque-target" ();
    cli_torque_tolerance "cli-torque-tolerance" ();
    cli_torque_spec "cli-torque-spec" ();
    cli_torque_stage "cli-torque-stage" ();

    // Keys of the figure "tool".
    cli_tool "cli-tool" ();
    cli_tool_setting "cli-tool-setting" ();

    // Keys of the figure "adapter".
    cli_adapter "cli-adapter" ();
    cli_adapter_torque "cli-adapter-torque" ();
    cli_adapter_tool "cli-adapter-tool" ();
    cli_adapter_adapter "cli-adapter-adapter" ();
    cli_adapter_angle "cli-adapter-angle" ();

    // Keys of the figure "angle".
    cli_angle "cli-angle" ();
    cli_angle_target "cli-angle-target" ();
    cli_angle_turned "cli-angle-turned" ();

    // Keys of the figure "bolt".
    cli_bolt "cli-bolt" ();
    cli_bolt_torque "cli-bolt-torque" ();
    cli_bolt_thread "cli-bolt-thread" ();
    cli_bolt_grade "cli-bolt-grade" ();

    // Keys of the figure "order".
    cli_order "cli-order" ();
    cli_order_pattern "cli-order-pattern" ();
    cli_order_bolt "cli-order-bolt" ();
    cli_order_done "cli-order-done" ();

    // Keys of the figure "cooldown".
    cli_cooldown "cli-cooldown" ();
    cli_cooldown_reading "cli-cooldown-reading" ();
    cli_cooldown_ambientoff "cli-cooldown-ambientoff" ();
    cli_cooldown_limit "cli-cooldown-limit" ();
    cli_cooldown_probe "cli-cooldown-probe" ();
    cli_cooldown_off "cli-cooldown-off" ();
    cli_cooldown_place "cli-cooldown-place" ();

    // Keys of the figure "touch".
    cli_touch "cli-touch" ();
    cli_touch_contact "cli-touch-contact" ();
    cli_touch_gloves "cli-touch-gloves" ();

    // Keys of the figure "surface".
    cli_surface "cli-surface" ();
    cli_surface_shows "cli-surface-shows" ();
    cli_surface_set "cli-surface-set" ();
    cli_surface_surface "cli-surface-surface" ();
    cli_surface_emissivity "cli-surface-emissivity" ();

    // Keys of the figure "labour".
    cli_labour "cli-labour" ();
    cli_labour_event "cli-labour-event" ();
    cli_labour_until "cli-labour-until" ();
    cli_labour_expected "cli-labour-expected" ();

    // What is wrong with what was typed.
    cli_wrong "cli-wrong" (key, text, why);
    cli_no_figure "cli-no-figure" (name, known);
    cli_no_key_value "cli-no-key-value" (text);
    cli_no_key "cli-no-key" (figure, key);
    cli_needs "cli-needs" (figure, key);
    cli_more_than_once "cli-more-than-once" (key, count);
    cli_does_not_load "cli-does-not-load" (file);
    cli_yes_or_no "cli-yes-or-no" ();
    cli_unit_missing "cli-unit-missing" (example);
    cli_whole_number "cli-whole-number" ();
    cli_day_form "cli-day-form" ();
    cli_gain_form "cli-gain-form" ();
    cli_bytes_form "cli-bytes-form" ();
    cli_event_form "cli-event-form" ();
    cli_form_mark "cli-form-mark" ();
    cli_form_level "cli-form-level" ();
    cli_form_tried "cli-form-tried" ();
    cli_form_addition "cli-form-addition" ();
    cli_form_drained "cli-form-drained" ();
    cli_form_amount "cli-form-amount" ();
    cli_form_density "cli-form-density" ();
    cli_form_limits "cli-form-limits" ();
    cli_form_meter "cli-form-meter" ();
    cli_form_tool "cli-form-tool" ();
    cli_form_target "cli-form-target" ();
    cli_form_bolt "cli-form-bolt" ();
    cli_form_reading "cli-form-reading" ();
    cli_form_emissivity "cli-form-emissivity" ();
    cli_level_words "cli-level-words" ();
    cli_tried_words "cli-tried-words" ();
    cli_pattern_words "cli-pattern-words" ();
    cli_place_words "cli-place-words" ();
    cli_surface_words "cli-surface-words" ();
    cli_stages "cli-stages" (count);
    cli_temp_missing "cli-temp-missing" ();
    cli_gain_missing "cli-gain-missing" ();
    cli_tolerance_missing "cli-tolerance-missing" ();
    cli_spec_missing "cli-spec-missing" ();
    cli_chart_missing "cli-chart-missing" ();
    cli_limits_missing "cli-limits-missing" ();
    cli_touch_limit_missing "cli-touch-limit-missing" ();
    cli_codes_or_bytes "cli-codes-or-bytes" ();
    cli_due_or_calibrated "cli-due-or-calibrated" ();
    cli_surface_or_emissivity "cli-surface-or-emissivity" ();
    cli_no_chart "cli-no-chart" (key);
    cli_no_range "cli-no-range" (key);
    cli_no_torque "cli-no-torque" (key);
    cli_no_value "cli-no-value" (key);
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("cli", super::MESSAGES);
}
