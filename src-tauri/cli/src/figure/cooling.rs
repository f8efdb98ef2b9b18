//! Cool-down, touch limit, surface by infrared.

use panside_trade::cooldown::{Cooling, Place, cool_down};
use panside_trade::surface::{Emissivity, InfraredReading, Surface, surface_temperature};
use panside_trade::touch::{Gloves, touch_limit};
use panside_trade::units::Unit;
use panside_trade::{Worked, Working};

use super::given::{Given, moment, number, parts, quantity, whole, wrong};
use super::{Figure, often, once, perhaps};
use crate::exit::{Exit, Failure};
use crate::message::*;

pub const FIGURES: &[Figure] = &[
    Figure {
        name: "cooldown",
        about: cli_cooldown,
        keys: &[
            often("reading", cli_cooldown_reading),
            once("ambient", cli_key_ambient),
            perhaps("ambientoff", cli_cooldown_ambientoff),
            perhaps("limit", cli_cooldown_limit),
            perhaps("probe", cli_cooldown_probe),
            perhaps("off", cli_cooldown_off),
            perhaps("place", cli_cooldown_place),
        ],
        example: "reading=0min:180C reading=10min:140C reading=20min:110,5C reading=30min:88C ambient=22C limit=48C",
        work: cooldown,
    },
    Figure {
        name: "touch",
        about: cli_touch,
        keys: &[once("contact", cli_touch_contact), perhaps("gloves", cli_touch_gloves)],
        example: "contact=10min",
        work: touch,
    },
    Figure {
        name: "surface",
        about: cli_surface,
        keys: &[
            once("shows", cli_surface_shows),
            perhaps("set", cli_surface_set),
            perhaps("surface", cli_surface_surface),
            perhaps("emissivity", cli_surface_emissivity),
            once("ambient", cli_key_ambient),
        ],
        example: "shows=60C set=0.95 surface=bright ambient=22C",
        work: surface,
    },
];

fn cooldown(given: &Given) -> Result<Working, Failure> {
    let reading = |text: &str| {
        let [at, shown] = parts("reading", text, cli_form_reading())?;
        Ok((moment("reading", at)?, quantity("reading", shown, Unit::DegreeCelsius)?))
    };
    let limit = match (given.get("limit"), given.sheet()) {
        (Some(text), _) => quantity("limit", text, Unit::DegreeCelsius)?,
        (None, Some(sheet)) => {
            let key = "touch_limit_bare_metal";
            let measure = sheet.measure(key);
            let measure = measure.ok_or_else(|| Failure::new(Exit::DoesNotLoad, cli_no_value(key)))?;
            measure
                .try_into()
                .map_err(|error: panside_trade::TradeError| wrong("limit", key, error.message()))?
        }
        (None, None) => {
            return Err(Failure::new(Exit::Usage, cli_touch_limit_missing()));
        }
    };
    let place = match given.or("place", "joint") {
        "joint" => Place::Joint,
        "shell" => Place::Shell,
        other => return Err(wrong("place", other, cli_place_words())),
    };
    let cooling = Cooling {
        place,
        readings: given.all("reading").map(reading).collect::<Result<Vec<_>, Failure>>()?,
        probe_off_by: given.quantity("probe", Unit::Kelvin, "1K")?,
        ambient: given.quantity("ambient", Unit::DegreeCelsius, "")?,
        ambient_off_by: given.quantity("ambientoff", Unit::Kelvin, "2K")?,
        engine_off: given.get("off").map(|text| moment("off", text)).transpose()?,
        limit,
    };
    Ok(cool_down(cooling)?.working())
}

fn touch(given: &Given) -> Result<Working, Failure> {
    let gloves = match given.get("gloves") {
        None | Some("none") => Gloves::None,
        Some(level) => Gloves::ContactHeat(whole("gloves", level)?),
    };
    Ok(touch_limit(given.quantity("contact", Unit::Minute, "")?, gloves)?.working())
}

fn surface(given: &Given) -> Result<Working, Failure> {
    let emissivity = match (given.get("surface"), given.get("emissivity")) {
        (Some(surface), None) => match surface {
            "coated" => Surface::Coated,
            "oxidised" => Surface::Oxidised,
            "rusty" => Surface::Rusty,
            "bright" => Surface::Bright,
            other => return Err(wrong("surface", other, cli_surface_words())),
        }
        .emissivity(),
        (None, Some(text)) => {
            let [lowest, highest] = parts("emissivity", text, cli_form_emissivity())?;
            Emissivity::new(number("emissivity", lowest)?, number("emissivity", highest)?)?
        }
        _ => return Err(Failure::new(Exit::Usage, cli_surface_or_emissivity())),
    };
    let reading = InfraredReading {
        shows: given.quantity("shows", Unit::DegreeCelsius, "")?,
        set_to: number("set", given.or("set", "0.95"))?,
        surface: emissivity,
        ambient: given.quantity("ambient", Unit::DegreeCelsius, "")?,
    };
    Ok(surface_temperature(reading)?.working())
}
