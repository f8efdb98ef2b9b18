//! Cool-down, touch limit, surface by infrared.

use panside_trade::cooldown::{Cooling, Place, cool_down};
use panside_trade::surface::{Emissivity, InfraredReading, Surface, surface_temperature};
use panside_trade::touch::{Gloves, touch_limit};
use panside_trade::units::Unit;
use panside_trade::{Worked, Working};

use super::given::{Given, moment, number, parts, quantity, whole, wrong};
use super::{Figure, often, once, perhaps};
use crate::exit::{Exit, Failure};

pub const FIGURES: &[Figure] = &[
    Figure {
        name: "cooldown",
        about: "how a hot part cools, and the time before which it is not at its touch limit",
        keys: &[
            often("reading", "a time and what the contact probe shows, 0min:180C"),
            once("ambient", "temperature of the surroundings, 22C"),
            perhaps("ambientoff", "how far that may be off or change, 2K"),
            perhaps("limit", "the touch limit, 48C; else touch_limit_bare_metal of the sheet"),
            perhaps("probe", "how far the probe may be off, 1K"),
            perhaps("off", "when the engine was last switched off, 0min"),
            perhaps("place", "joint or shell"),
        ],
        example: "reading=0min:180C reading=10min:140C reading=20min:110,5C reading=30min:88C ambient=22C limit=48C",
        work: cooldown,
    },
    Figure {
        name: "touch",
        about: "how hot a surface may be to be touched",
        keys: &[
            once("contact", "how long it is touched, 10min or 5s"),
            perhaps("gloves", "level against contact heat that is printed on them, 1 to 4"),
        ],
        example: "contact=10min",
        work: touch,
    },
    Figure {
        name: "surface",
        about: "the true temperature of a surface that was read by infrared",
        keys: &[
            once("shows", "what the meter shows, 60C"),
            perhaps("set", "the emissivity that is set on it, 0.95"),
            perhaps("surface", "coated, oxidised, rusty or bright"),
            perhaps("emissivity", "instead: the surface's lowest and highest emissivity, 0.8:0.9"),
            once("ambient", "temperature of the surroundings, 22C"),
        ],
        example: "shows=60C set=0.95 surface=bright ambient=22C",
        work: surface,
    },
];

fn cooldown(given: &Given) -> Result<Working, Failure> {
    let reading = |text: &str| {
        let [at, shown] = parts("reading", text, "time:temperature, such as 10min:140C")?;
        Ok((moment("reading", at)?, quantity("reading", shown, Unit::DegreeCelsius)?))
    };
    let limit = match (given.get("limit"), given.sheet()) {
        (Some(text), _) => quantity("limit", text, Unit::DegreeCelsius)?,
        (None, Some(sheet)) => {
            let key = "touch_limit_bare_metal";
            let measure = sheet.measure(key);
            let measure = measure.ok_or_else(|| {
                Failure::new(Exit::DoesNotLoad, format!("The sheet has no value \"{key}\"."))
            })?;
            measure.try_into().map_err(|error: panside_trade::TradeError| wrong("limit", key, error))?
        }
        (None, None) => {
            return Err(Failure::new(
                Exit::Usage,
                "The touch limit is missing: give limit=48C, or --sheet FILE.",
            ));
        }
    };
    let place = match given.or("place", "joint") {
        "joint" => Place::Joint,
        "shell" => Place::Shell,
        other => return Err(wrong("place", other, "it is joint or shell.")),
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
            other => return Err(wrong("surface", other, "it is coated, oxidised, rusty or bright.")),
        }
        .emissivity(),
        (None, Some(text)) => {
            let [lowest, highest] = parts("emissivity", text, "lowest:highest, such as 0.8:0.9")?;
            Emissivity::new(number("emissivity", lowest)?, number("emissivity", highest)?)?
        }
        _ => return Err(Failure::new(Exit::Usage, "Give either surface=coated or emissivity=0.8:0.9.")),
    };
    let reading = InfraredReading {
        shows: given.quantity("shows", Unit::DegreeCelsius, "")?,
        set_to: number("set", given.or("set", "0.95"))?,
        surface: emissivity,
        ambient: given.quantity("ambient", Unit::DegreeCelsius, "")?,
    };
    Ok(surface_temperature(reading)?.working())
}
