//! Surfaces by infrared: what is turned back, what is refused as evidence. scipy is asked in `tests/figures`.

use panside_trade::measure::Temperature;
use panside_trade::surface::{Emissivity, InfraredReading, Surface, SurfaceTemperature, surface_temperature};
use panside_trade::{FigureError, Worked as _};
use proptest::prelude::*;

use crate::Worked;

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value).unwrap()
}

fn real(
    shows: f64,
    set_to: f64,
    surface: Emissivity,
    ambient: f64,
) -> Result<SurfaceTemperature, FigureError> {
    surface_temperature(InfraredReading { shows: celsius(shows), set_to, surface, ambient: celsius(ambient) })
}

fn exactly(emissivity: f64) -> Emissivity {
    Emissivity::new(emissivity, emissivity).unwrap()
}

#[test]
fn a_meter_set_right_shows_the_surface() -> Worked {
    for shows in [-20.0, 22.0, 60.0, 300.0] {
        let found = real(shows, 0.95, exactly(0.95), 22.0)?;
        assert!((found.likely.celsius() - shows).abs() < 1e-9, "{shows}: {}", found.likely);
    }
    Ok(())
}

#[test]
fn at_the_temperature_of_the_surroundings_emissivity_does_not_matter() -> Worked {
    // An application note on radiometric temperature: "a 40 °C blackbody in a 40 °C room would require no correction".
    for emissivity in [0.1, 0.5, 0.95] {
        assert!((real(40.0, 0.95, exactly(emissivity), 40.0)?.likely.celsius() - 40.0).abs() < 1e-9);
    }
    Ok(())
}

#[test]
fn a_bright_pipe_that_reads_40_may_burn_and_is_no_evidence() -> Worked {
    let found = real(40.0, 0.95, Surface::Bright.emissivity(), 22.0)?;
    assert!(!found.is_evidence);
    assert!(found.highest.celsius() > 200.0, "{}", found.highest);
    assert!(found.working().to_string().contains("no evidence"));
    assert!(real(40.0, 0.95, Surface::Coated.emissivity(), 22.0)?.is_evidence);
    for surface in [Surface::Oxidised, Surface::Rusty] {
        assert!(!real(40.0, 0.95, surface.emissivity(), 22.0)?.is_evidence, "tables reach below 0.6");
    }
    Ok(())
}

#[test]
fn emissivities_and_temperatures_that_can_not_be_are_refused() {
    for (lowest, highest) in
        [(0.0, 0.5), (-0.1, 0.5), (0.9, 0.8), (0.9, 1.1), (f64::NAN, 0.9), (0.5, f64::NAN)]
    {
        let refused = Emissivity::new(lowest, highest);
        assert!(matches!(refused, Err(FigureError::EmissivityRange { .. })), "{lowest} to {highest}");
    }
    for set in [0.0, 1.01, f64::NAN, f64::INFINITY] {
        let refused = real(40.0, set, exactly(0.9), 22.0);
        assert!(matches!(refused, Err(FigureError::EmissivityRange { .. })), "{set}");
    }
    for (shows, ambient) in [(-51.0, 22.0), (1001.0, 22.0), (40.0, -60.0)] {
        assert!(matches!(real(shows, 0.95, exactly(0.9), ambient), Err(FigureError::Radiation { .. })));
    }
    // Far colder than the workshop by the meter, on a bright pipe: no surface does that.
    assert!(matches!(real(-40.0, 0.95, exactly(0.05), 22.0), Err(FigureError::Radiation { .. })));
    // So hot by the meter that a bright pipe would glow.
    assert!(matches!(real(900.0, 1.0, exactly(0.05), 22.0), Err(FigureError::Radiation { .. })));
}

proptest! {
    #[test]
    fn above_the_surroundings_a_lower_emissivity_is_always_hotter(
        shows in 23.0..200.0_f64,
        emissivity in 0.3..0.9_f64,
        less in 0.01..0.2_f64,
    ) {
        let at = |emissivity: f64| real(shows, 0.95, exactly(emissivity), 22.0).unwrap().likely;
        prop_assert!(at(emissivity - less) > at(emissivity));
    }

    // From 0 °C: what the coldest surface that is judged, of -50 °C, shows at the lowest emissivity here is -8.6 °C, and
    // below that the reading is refused.
    #[test]
    fn the_spread_holds_what_is_likely(shows in 0.0..150.0_f64, lowest in 0.5..0.9_f64, wider in 0.0..0.1_f64) {
        let found = real(shows, 0.95, Emissivity::new(lowest, lowest + wider).unwrap(), 22.0).unwrap();
        prop_assert!(found.lowest <= found.likely && found.likely <= found.highest);
    }
}
