use serde_json::{Value, json};

use super::reading::Reading;
use super::*;
use crate::design::{Design, Rim, SoundHoleChoice};
use crate::lessons::figure::Scale;
use crate::top::Stages;

fn lesson() -> Value {
    json!({
        "format": FORMAT,
        "version": VERSION,
        "look": { "mode": "ring" },
        "change": { "arching.apex_height_mm": 17.0 },
        "right": 2,
        "claim": { "figure": "mass", "goes": "rises", "by": 0.5 },
        "texts": { "en": {
            "title": "A", "see": "B", "question": "C?", "choices": ["no", "yes"], "change": "D", "why": "E"
        } }
    })
}

/// The lesson with another value at a JSON pointer.
fn with(pointer: &str, value: Value) -> String {
    let mut lesson = lesson();
    let (parent, key) = pointer.rsplit_once('/').unwrap();
    match lesson.pointer_mut(parent).unwrap() {
        Value::Object(object) => _ = object.insert(key.to_owned(), value),
        other => other[key.parse::<usize>().unwrap()] = value,
    }
    lesson.to_string()
}

fn refusal(json: &str) -> LessonError {
    Lesson::from_json(json).unwrap_err()
}

#[test]
fn a_lesson_changes_the_demonstration_twice() {
    let mut json = lesson();
    json["start"] = json!({
        "sound_holes.*.lower_eye_to_edge_mm": 11.0,
        "sound_holes.treble": { "kind": "none" },
        "masses": [{ "place": { "across_mm": 0.0, "station_mm": 150.0 }, "mass_g": 3.0 }]
    });
    json["change"] = json!({ "masses.0.mass_g": 4.0, "arching.cross_arches.*.fullness": 0.5 });
    let lesson = Lesson::from_json(&json.to_string()).unwrap();
    let [before, after] = lesson.designs().unwrap();
    let SoundHoleChoice::EyesAndStem(bass) = &before.sound_holes.bass else { panic!("{before:?}") };
    assert_eq!(bass.lower_eye_to_edge_mm, 11.0);
    assert_eq!(before.sound_holes.treble, SoundHoleChoice::None);
    assert_eq!(before.sound_holes.stop_mm, Design::demo().sound_holes.stop_mm, "which is no hole");
    assert_eq!((before.masses[0].mass_g, after.masses[0].mass_g), (3.0, 4.0));
    assert_eq!(after.arching.cross_arches.waist.fullness, 0.5);
    let same: Lesson = serde_json::from_str(&serde_json::to_string(&lesson).unwrap()).unwrap();
    assert_eq!(same, lesson);
}

/// Each fault: where it is, and of which kind; nothing panics.
#[test]
fn a_faulty_lesson_is_refused_by_its_place() {
    let cases = [
        (with("/format", json!("bombatura-design")), "lesson_wrong_format", "format"),
        (with("/version", json!(2)), "lesson_unknown_version", "version"),
        (with("/ask", json!(1)), "lesson_wrong_shape", "ask"),
        (with("/claim/figure", json!("loudness")), "lesson_wrong_shape", "claim.figure"),
        (with("/look/mode", json!("roll")), "lesson_wrong_shape", "look.mode"),
        (with("/look/mode", json!(99)), "lesson_wrong_shape", "look.mode"),
        (with("/look/hz", json!(300.0)), "lesson_outside", "look"),
        (with("/look", json!({ "hz": 20_000.0 })), "lesson_outside", "look.hz"),
        (with("/claim/by", json!(0)), "lesson_outside", "claim.by"),
        (with("/claim/mode", json!("x")), "lesson_needless", "claim"),
        (with("/claim", json!({ "figure": "give", "goes": "falls", "by": 1 })), "lesson_needs", "claim"),
        (with("/right", json!(3)), "lesson_outside", "right"),
        (with("/texts", json!({})), "lesson_outside", "texts"),
        (with("/texts/english", lesson()["texts"]["en"].clone()), "lesson_outside", "texts"),
        (with("/texts/en/why", json!(" ")), "lesson_outside", "texts.en.why"),
        (with("/texts/en/title", json!("x".repeat(121))), "lesson_outside", "texts.en.title"),
        (with("/texts/en/choices", json!(["yes"])), "lesson_outside", "texts.en.choices"),
        (
            with("/change", json!({ "arching.apex.height_mm": 1 })),
            "lesson_no_such_place",
            "change.arching.apex.height_mm",
        ),
        (with("/change", json!({ "arching.apex_height_mm": 99.0 })), "lesson_design", "change"),
        (with("/start", json!({ "varnish": "red" })), "lesson_design", "start"),
        ("{ \"format\": ".to_owned(), "lesson_not_json", ""),
        (" ".repeat(LARGEST_LESSON_BYTES + 1), "lesson_too_large", ""),
    ];
    for (json, kind, path) in cases {
        let error = refusal(&json);
        assert_eq!((error.kind(), error.path()), (kind, path), "{error}");
        assert!(error.to_string().len() > 20, "{error}");
    }
    let twice = lesson().to_string().replace("\"arching.apex_height_mm\":17.0", "\"rim\":\"free\",\"rim\":\"hinged\"");
    assert_eq!(refusal(&twice).kind(), "lesson_wrong_shape");
    assert!(refusal(&with("/change", json!({ "arching.apex_height_mm": 99.0 }))).to_string().contains("99"));
}

/// A figure that the tops don't have is told when it is worked out.
#[test]
fn a_figure_that_is_not_there_is_named() {
    let of = |claim: Value| Lesson::from_json(&with("/claim", claim)).unwrap().outcome().unwrap_err();
    let give = of(json!({ "figure": "give", "push": "rocking", "goes": "falls", "by": 1 }));
    assert_eq!(give, LessonError::Floats);
    let region = of(json!({ "figure": "narrowest", "region": "neck", "goes": "falls", "by": 1 }));
    assert!(matches!(&region, LessonError::NoRegion { there, .. } if there.contains("island")), "{region}");
}

/// The mass follows the drawing: an arch 1.5 mm higher is a little larger; a claim that it falls is not shown.
#[test]
fn an_outcome_can_fail() {
    let right = Lesson::from_json(&with("/claim/by", json!(0.2))).unwrap().outcome().unwrap();
    assert!(right.shown && right.change > 0.2 && right.after.value > right.before.value, "{right:?}");
    // Both tops are of one board: its density moves both by the same share.
    assert!(right.same_board && right.change_within < 1e-9 && right.before.sure_within > 1.0, "{right:?}");
    let turned = Lesson::from_json(&with("/claim/goes", json!("falls"))).unwrap().outcome().unwrap();
    let stays = Lesson::from_json(&with("/claim", json!({ "figure": "mass", "goes": "stays", "by": 0.1 })));
    assert!(!turned.shown && !stays.unwrap().outcome().unwrap().shown);
}

/// Closed forms: scatter of a sum and of a ratio.
#[test]
fn a_change_is_as_sure_as_its_parts() {
    let before = Reading::new(100.0, vec![3.0, 4.0], [0.0, 12.0]);
    assert_eq!(before.sure_within, 13.0);
    let after = Reading::new(110.0, vec![3.0, 8.0], [0.0, 0.0]);
    assert_eq!(before.change(&after, Scale::Difference, true), [10.0, 4.0]);
    assert_eq!(before.change(&after, Scale::Difference, false), [10.0, (9.0_f64 + 16.0 + 9.0 + 64.0).sqrt()]);
    let alike = Reading::new(200.0, vec![6.0, 8.0], [0.0, 0.0]);
    let [doubled, within] = before.change(&alike, Scale::Ratio, true);
    assert!((doubled - 100.0).abs() < 1e-12 && within < 1e-12, "{doubled} {within}");
}

/// A newton under one foot moves it by w₁₁, both feet rocked by w₁₁ + w₂₂ − 2 w₁₂, pressed together by their mean: for any elastic top
/// 4 × pressed + rocked = 2 × (bass + treble).
#[test]
fn gives_of_the_feet_add_up() {
    let mut design = Design::demo();
    design.rim = Rim::Hinged;
    let mut top = Stages::new(design);
    let [pressed, rocked, bass, treble] = [Push::BothFeet, Push::Rocking, Push::BassFoot, Push::TrebleFoot]
        .map(|push| super::pushed::give(&mut top, push).unwrap().value);
    let (left, right) = (4.0 * pressed + rocked, 2.0 * (bass + treble));
    assert!((left / right - 1.0).abs() < 1e-9, "{left} {right}");
}
