//! Every number of a design: what it is, its unit and what it may be.

/// One number of the design.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// Where it stands in the JSON document, keys joined by dots. `*` stands for any one key or place in a list.
    pub path: &'static str,
    /// What it is, in a maker's words.
    pub what: &'static str,
    /// Unit: "mm", "g", "GPa", "deg" or "" for a pure number.
    pub unit: &'static str,
    /// Smallest allowed value.
    pub least: f64,
    /// Largest allowed value.
    pub most: f64,
}

impl Measure {
    /// The measure of a path as the table has it.
    #[must_use]
    pub fn of_path(path: &str) -> Option<&'static Measure> {
        MEASURES.iter().find(|measure| measure.path == path)
    }
}

const fn measure(path: &'static str, what: &'static str, unit: &'static str, least: f64, most: f64) -> Measure {
    Measure { path, what, unit, least, most }
}

const PLACE: &str = "place of an arch's point, 0 at the crest to 1 at the channel";
const HEIGHT: &str = "height of an arch's point over the crest's, both above the channel";
const BASS_FULLNESS: &str = "fullness of a cross arch on the bass side";

/// The table of measures. It is what messages and sliders are made from.
///
/// The limits are wide enough for tops from the smallest fractional violin (body about 180 mm) to a cello (about
/// 760 mm) and narrow enough that a wrong unit is caught (common practice, no source).
pub const MEASURES: &[Measure] = &[
    measure("outline.length_mm", "length of the body", "mm", 150.0, 800.0),
    measure("outline.upper_width_mm", "width of the upper bout", "mm", 70.0, 380.0),
    measure("outline.upper_station_mm", "where the upper bout is widest, from the bottom edge", "mm", 100.0, 700.0),
    measure("outline.waist_width_mm", "width of the waist", "mm", 45.0, 260.0),
    measure("outline.waist_station_mm", "where the waist is narrowest, from the bottom edge", "mm", 60.0, 560.0),
    measure("outline.lower_width_mm", "width of the lower bout", "mm", 85.0, 480.0),
    measure("outline.lower_station_mm", "where the lower bout is widest, from the bottom edge", "mm", 25.0, 250.0),
    measure(
        "outline.upper_corner.station_mm",
        "middle of the upper corner's tip, from the bottom edge",
        "mm",
        80.0,
        620.0,
    ),
    measure(
        "outline.upper_corner.reach_mm",
        "middle of the upper corner's tip, from the centreline",
        "mm",
        30.0,
        190.0,
    ),
    measure("outline.upper_corner.width_mm", "width of the upper corner's tip", "mm", 2.0, 16.0),
    measure("outline.upper_corner.lean_deg", "lean of the upper corner towards the waist", "deg", -20.0, 50.0),
    measure(
        "outline.lower_corner.station_mm",
        "middle of the lower corner's tip, from the bottom edge",
        "mm",
        50.0,
        420.0,
    ),
    measure(
        "outline.lower_corner.reach_mm",
        "middle of the lower corner's tip, from the centreline",
        "mm",
        35.0,
        230.0,
    ),
    measure("outline.lower_corner.width_mm", "width of the lower corner's tip", "mm", 2.0, 16.0),
    measure("outline.lower_corner.lean_deg", "lean of the lower corner towards the waist", "deg", -20.0, 50.0),
    measure(
        "outline.upper_end_fullness",
        "fullness of the upper end: side radius over the height of the end curve",
        "",
        0.4,
        0.97,
    ),
    measure(
        "outline.lower_end_fullness",
        "fullness of the lower end: side radius over the height of the end curve",
        "",
        0.4,
        0.97,
    ),
    measure("outline.overhang_mm", "overhang of the edge beyond the ribs", "mm", 0.0, 8.0),
    measure("outline.bass.upper_half_width_mm", "half width of the upper bout on the bass side", "mm", 35.0, 190.0),
    measure("outline.bass.waist_half_width_mm", "half width of the waist on the bass side", "mm", 22.5, 130.0),
    measure("outline.bass.lower_half_width_mm", "half width of the lower bout on the bass side", "mm", 42.5, 240.0),
    measure(
        "outline.bass.upper_corner.station_mm",
        "middle of the upper corner's tip on the bass side, from the bottom edge",
        "mm",
        80.0,
        620.0,
    ),
    measure(
        "outline.bass.upper_corner.reach_mm",
        "middle of the upper corner's tip on the bass side, from the centreline",
        "mm",
        30.0,
        190.0,
    ),
    measure("outline.bass.upper_corner.width_mm", "width of the upper corner's tip on the bass side", "mm", 2.0, 16.0),
    measure(
        "outline.bass.upper_corner.lean_deg",
        "lean of the upper corner on the bass side towards the waist",
        "deg",
        -20.0,
        50.0,
    ),
    measure(
        "outline.bass.lower_corner.station_mm",
        "middle of the lower corner's tip on the bass side, from the bottom edge",
        "mm",
        50.0,
        420.0,
    ),
    measure(
        "outline.bass.lower_corner.reach_mm",
        "middle of the lower corner's tip on the bass side, from the centreline",
        "mm",
        35.0,
        230.0,
    ),
    measure("outline.bass.lower_corner.width_mm", "width of the lower corner's tip on the bass side", "mm", 2.0, 16.0),
    measure(
        "outline.bass.lower_corner.lean_deg",
        "lean of the lower corner on the bass side towards the waist",
        "deg",
        -20.0,
        50.0,
    ),
    measure("arching.edge_height_mm", "height of the edge's top above the ribs", "mm", 1.5, 10.0),
    measure("arching.apex_height_mm", "height of the arch's apex above the ribs", "mm", 4.0, 45.0),
    measure("arching.channel_depth_mm", "depth of the channel below the edge's top", "mm", 0.0, 3.0),
    measure("arching.channel_distance_mm", "distance of the channel line from the edge", "mm", 3.0, 25.0),
    measure(
        "arching.long_arch_fullness",
        "fullness of the long arch: its mean height over its greatest",
        "",
        0.42,
        0.72,
    ),
    measure("arching.cross_arches.upper_bout.fullness", "fullness of the cross arch at the upper bout", "", 0.4, 0.7),
    measure(
        "arching.cross_arches.upper_corners.fullness",
        "fullness of the cross arch at the upper corners",
        "",
        0.4,
        0.7,
    ),
    measure("arching.cross_arches.waist.fullness", "fullness of the cross arch at the waist", "", 0.4, 0.7),
    measure(
        "arching.cross_arches.lower_corners.fullness",
        "fullness of the cross arch at the lower corners",
        "",
        0.4,
        0.7,
    ),
    measure("arching.cross_arches.lower_bout.fullness", "fullness of the cross arch at the lower bout", "", 0.4, 0.7),
    measure("arching.apex_station_mm", "where the long arch is highest, from the bottom edge", "mm", 40.0, 600.0),
    measure("arching.long_arch.lower.*.place", PLACE, "", 0.01, 0.99),
    measure("arching.long_arch.lower.*.height", HEIGHT, "", -0.2, 1.2),
    measure("arching.long_arch.upper.*.place", PLACE, "", 0.01, 0.99),
    measure("arching.long_arch.upper.*.height", HEIGHT, "", -0.2, 1.2),
    measure("arching.cross_arches.*.curve.points.*.place", PLACE, "", 0.01, 0.99),
    measure("arching.cross_arches.*.curve.points.*.height", HEIGHT, "", -0.2, 1.2),
    measure("arching.cross_arches.*.bass.fullness", BASS_FULLNESS, "", 0.4, 0.7),
    measure("arching.cross_arches.*.bass.curve.points.*.place", PLACE, "", 0.01, 0.99),
    measure("arching.cross_arches.*.bass.curve.points.*.height", HEIGHT, "", -0.2, 1.2),
    measure(
        "arching.extra_arches.*.station_mm",
        "station of a further cross arch, from the bottom edge",
        "mm",
        0.0,
        800.0,
    ),
    measure("arching.extra_arches.*.arch.fullness", "fullness of a further cross arch", "", 0.4, 0.7),
    measure("arching.extra_arches.*.arch.curve.points.*.place", PLACE, "", 0.01, 0.99),
    measure("arching.extra_arches.*.arch.curve.points.*.height", HEIGHT, "", -0.2, 1.2),
    measure("arching.extra_arches.*.arch.bass.fullness", BASS_FULLNESS, "", 0.4, 0.7),
    measure("arching.extra_arches.*.arch.bass.curve.points.*.place", PLACE, "", 0.01, 0.99),
    measure("arching.extra_arches.*.arch.bass.curve.points.*.height", HEIGHT, "", -0.2, 1.2),
    measure("sound_holes.stop_mm", "stop, from the neck-end edge to the nicks", "mm", 80.0, 440.0),
    measure("sound_holes.*.upper_eye_diameter_mm", "diameter of the upper eye", "mm", 3.0, 16.0),
    measure(
        "sound_holes.*.upper_eye_to_centreline_mm",
        "upper eye to the centreline: half the distance between the upper eyes",
        "mm",
        8.0,
        60.0,
    ),
    measure("sound_holes.*.upper_eye_station_mm", "middle of the upper eye, from the bottom edge", "mm", 60.0, 520.0),
    measure("sound_holes.*.lower_eye_diameter_mm", "diameter of the lower eye", "mm", 4.0, 22.0),
    measure("sound_holes.*.lower_eye_to_edge_mm", "lower eye to the edge", "mm", 5.0, 40.0),
    measure("sound_holes.*.lower_eye_station_mm", "middle of the lower eye, from the bottom edge", "mm", 40.0, 400.0),
    measure("sound_holes.*.stem_width_mm", "width of the stem at the nicks", "mm", 1.5, 16.0),
    measure("sound_holes.*.throat_width_mm", "width of the slot where it runs into an eye", "mm", 0.8, 8.0),
    measure("sound_holes.*.upper_wing_width_mm", "width of the upper wing", "mm", 3.0, 25.0),
    measure("sound_holes.*.lower_wing_width_mm", "width of the lower wing", "mm", 4.0, 35.0),
    measure("sound_holes.*.wing_rounding_mm", "radius to which a wing's point is rounded", "mm", 0.3, 2.0),
    measure("sound_holes.*.nick_depth_mm", "depth of the nicks, 0 for none", "mm", 0.0, 2.5),
    measure("sound_holes.*.diameter_mm", "diameter of the round hole", "mm", 5.0, 120.0),
    measure("sound_holes.*.centre_to_centreline_mm", "middle of the hole from the centreline", "mm", 0.0, 200.0),
    measure("sound_holes.*.centre_station_mm", "middle of the hole, from the bottom edge", "mm", 20.0, 780.0),
    measure("sound_holes.*.length_mm", "length of the hole from end to end", "mm", 5.0, 250.0),
    // Below half a millimetre no saw passes, and a mesh would need elements far thinner than the wood is thick.
    measure("sound_holes.*.width_mm", "width of the hole", "mm", 0.5, 60.0),
    measure(
        "sound_holes.*.bow_mm",
        "how far the crescent bows out towards the edge, inwards below zero",
        "mm",
        -120.0,
        120.0,
    ),
    measure("sound_holes.*.end_rounding_mm", "radius to which the crescent's horns are rounded", "mm", 0.2, 10.0),
    measure("sound_holes.*.lean_deg", "lean of the hole's upper end towards the centreline", "deg", -90.0, 90.0),
    measure("graduation.centre_mm", "thickness in the centre", "mm", 0.8, 12.0),
    measure("graduation.flank_mm", "thickness of the flanks", "mm", 0.8, 12.0),
    measure("graduation.edge_mm", "thickness of the edge", "mm", 1.5, 12.0),
    measure("graduation.upper_bout_mm", "thickness of the upper bout", "mm", 0.8, 12.0),
    measure("graduation.lower_bout_mm", "thickness of the lower bout", "mm", 0.8, 12.0),
    measure("graduation.channel_mm", "thickness of the channel", "mm", 0.8, 12.0),
    measure("graduation.around_holes_mm", "thickness round the sound holes", "mm", 0.8, 12.0),
    measure("graduation.wings_mm", "thickness of the wings", "mm", 0.8, 12.0),
    measure("graduation.*.*.place.across_mm", "a thickness's place from the centreline", "mm", -250.0, 250.0),
    measure("graduation.*.*.place.station_mm", "a thickness's place, from the bottom edge", "mm", 0.0, 800.0),
    measure("graduation.*.*.thickness_mm", "a thickness", "mm", 0.8, 12.0),
    measure("graduation.painted.*.reach_mm", "how far a painted thickness reaches", "mm", 2.0, 200.0),
    measure("wood.ring_angle_deg", "tilt of the rings from standing upright", "deg", -90.0, 90.0),
    measure(
        "bar.lower_end.across_mm",
        "the bar's lower end from the centreline, bass side below zero",
        "mm",
        -200.0,
        200.0,
    ),
    measure("bar.lower_end.station_mm", "the bar's lower end, from the bottom edge", "mm", 0.0, 800.0),
    measure(
        "bar.upper_end.across_mm",
        "the bar's upper end from the centreline, bass side below zero",
        "mm",
        -200.0,
        200.0,
    ),
    measure("bar.upper_end.station_mm", "the bar's upper end, from the bottom edge", "mm", 0.0, 800.0),
    measure("bar.width_mm", "width of the bar", "mm", 1.0, 25.0),
    measure("bar.height_mm", "height of the bar at its highest place", "mm", 0.0, 50.0),
    measure("bar.highest_station_mm", "where the bar is highest, from the bottom edge", "mm", 0.0, 800.0),
    measure("bar.end_height_mm", "height of the bar at its ends", "mm", 0.0, 50.0),
    measure("post.place.across_mm", "the post from the centreline, bass side below zero", "mm", -200.0, 200.0),
    measure("post.place.station_mm", "the post, from the bottom edge", "mm", 0.0, 800.0),
    measure("post.diameter_mm", "diameter of the post", "mm", 2.0, 20.0),
    measure("post.length_mm", "length of the post", "mm", 20.0, 250.0),
    measure("masses.*.place.across_mm", "an added mass from the centreline, bass side below zero", "mm", -250.0, 250.0),
    measure("masses.*.place.station_mm", "an added mass, from the bottom edge", "mm", 0.0, 800.0),
    measure("masses.*.mass_g", "an added mass", "g", 0.0, 200.0),
    measure("rim.elastic.height_mm", "height of the ribs", "mm", 10.0, 180.0),
    measure("rim.elastic.thickness_mm", "thickness of the ribs", "mm", 0.5, 5.0),
    measure("rim.elastic.lining_height_mm", "height of each lining, 0 for none", "mm", 0.0, 40.0),
    measure("rim.elastic.lining_thickness_mm", "thickness of each lining", "mm", 0.0, 10.0),
    measure("rim.elastic.across_gpa", "modulus of the ribs' wood across the grain", "GPa", 0.1, 20.0),
    measure("rim.elastic.shear_gpa", "shear modulus of the ribs' wood in their face", "GPa", 0.05, 10.0),
    measure(
        "rim.elastic.end_block_reach_mm",
        "reach of the upper and lower block from the centreline",
        "mm",
        0.0,
        100.0,
    ),
    measure("rim.elastic.corner_block_reach_mm", "reach of a corner block from the corner's tip", "mm", 0.0, 80.0),
    measure("rim.elastic.block_factor", "how many times as stiff as a rib a block is", "", 1.0, 10000.0),
];
