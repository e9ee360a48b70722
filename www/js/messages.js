/**
 * What the page and its workers say to each other.
 *
 * Every request carries the whole design, so the worker holds nothing that a restart could lose, and every request
 * gets exactly one reply with the same id. Requests of one kind replace each other: a newer one waiting makes an older
 * one's reply "superseded". Big arrays travel as transferables, never as copies.
 *
 * @module
 */

/** @typedef {"preview" | "standard" | "fine"} MeshSize How finely the top is cut into triangles. */

/**
 * The top as the view draws it. Lengths in mm.
 * @typedef {object} Picture
 * @property {Float32Array} positions (vertex, xyz) in mm
 * @property {Float32Array} normals (vertex, xyz), unit
 * @property {Uint32Array} triangles (triangle, corner)
 * @property {Uint32Array} kinds (vertex) 0 outside, 1 inside, 2 wall
 * @property {number} nodes nodes of the mesh that the figures come from
 * @property {number} mass_g mass of the wood
 */

/**
 * One motion on the picture's vertices: Re[(re + i im) e^(i phase)] is the displacement, at most 1 mm anywhere, and the
 * change of the normal.
 * @typedef {object} Motion
 * @property {number} mode number of the mode, 1 for the lowest elastic one
 * @property {Float32Array} re (vertex, [ux, uy, uz, nx, ny, nz])
 * @property {Float32Array} im (vertex, [ux, uy, uz, nx, ny, nz])
 * @property {number} [scale_mm_per_m] of a mode: what its shape of unit modal mass was multiplied by
 */

/**
 * @typedef {object} Mode
 * @property {number} number 1 for the lowest elastic mode
 * @property {string} name assigned from the shape ("twist", "x", "ring"), or empty
 * @property {number} frequency_hz
 * @property {number} [foreseen_hz] corrected for the mesh as the fine mesh last corrected this shape
 * @property {number} residual relative residual of the eigenproblem
 * @property {number} identity the number that goes on with its shape while a handle moves; 0 where that is not known
 */

/**
 * A mode's frequency without the mesh's error, how sure it is, and how the wood damps it.
 * @typedef {object} Surety
 * @property {number | null} [converged_hz] corrected for the mesh; none where two meshes can't tell
 * @property {number | null} [mesh_hz] what mesh and shell leave open in it, ± Hz; none without it
 * @property {number} wood_hz one standard deviation of what boards of the wood differ by, ± Hz
 * @property {number[]} wood_parts_pct what one standard deviation of each figure of the wood makes, per cent with its sign
 * @property {number} q quality factor, by the wood's own losses
 */

/**
 * Which mode the person is looking at: by its shape while a handle moves, else by its name where it has one, because a change
 * can reorder the modes.
 * @typedef {object} ModeWish
 * @property {string} name
 * @property {number} number
 * @property {number} [identity]
 */

/**
 * Modes by which those on another mesh know themselves.
 * @typedef {object} Kin
 * @property {Float32Array} signatures (mode, place)
 * @property {number[]} identities (mode)
 */

/**
 * One consistent set: the figures, the picture they belong to, and the motion of the wished mode.
 * @typedef {object} Solution
 * @property {MeshSize} size
 * @property {Picture} picture
 * @property {Mode[]} modes
 * @property {boolean} [set_right] of a preview: whether its figures are corrected as the standard mesh last corrected their shapes
 * @property {Motion} motion
 * @property {number} solve_ms
 * @property {boolean} proven whether it is proven that no mode is missing among them
 */

/**
 * The same of a top whose handle moves.
 * @typedef {Solution & { signatures: Float32Array }} Step
 */

/** @typedef {[number, number]} Place on a sheet: to the right and downwards, mm at true scale */

/**
 * Something on a drawing that moves with one number of the design.
 * @typedef {object} Handle
 * @property {string[]} paths where the number stands in the design, keys joined by dots; both sides' where they are alike
 * @property {string} what in a maker's words
 * @property {string} unit "mm", or empty for a pure number
 * @property {number} value
 * @property {number} least
 * @property {number} most
 * @property {Place} at
 * @property {Place} along how far it moves when the number grows by one
 */

/**
 * @typedef {object} Drawing
 * @property {Place} low
 * @property {Place} high
 * @property {{ kind: string, path: string }[]} lines SVG path data
 * @property {{ name: string, value_mm: number, at: Place, minor: boolean }[]} labels
 * @property {Handle[]} handles
 */

/** @typedef {{ plan: Drawing, long_arch: Drawing, cross_arches: Drawing }} Drawings */

/** @typedef {{ value: number, at: Place }} FigureAt a figure and its place in plan, x and y in mm */

/**
 * How the inflection line meets a sound hole.
 * @typedef {object} HoleMeeting
 * @property {boolean} treble_side
 * @property {{ from_nicks_mm?: number | null, on_stem: boolean }[]} crossings along the stem, above zero towards the upper eye
 * @property {{ inside: boolean, by_mm: number } | null} [misses] where there is no crossing: on which side, and the wood between
 */

/**
 * What the arching does. Lengths in mm.
 * @typedef {object} Arching
 * @property {number} apex_mm above the plane of the ribs
 * @property {number} rise_mm of the apex above the edge
 * @property {number} channel_depth_mm
 * @property {FigureAt} steepest degrees
 * @property {FigureAt | null} [hollow_radius] smallest radius of what is hollow
 * @property {FigureAt | null} [round_radius] and of what stands out
 * @property {HoleMeeting[]} holes bass first
 */

/**
 * A number that a design can have.
 * @typedef {object} MeasureLimits
 * @property {string} path where it stands in the design, keys joined by dots; `*` stands for any one key
 * @property {string} what in a maker's words
 * @property {string} unit empty for a pure number
 * @property {number} least
 * @property {number} most
 */

/**
 * A force on the top.
 * @typedef {object} Drive
 * @property {"bow" | "press" | "tap"} by
 * @property {[number, number]} place_mm counts for a tap
 * @property {number} [bridge_hz] at which the bridge rocks by itself; a stiff one without
 */

/**
 * One control moved by as much as is usual at a time.
 * @typedef {object} WorkshopStep
 * @property {string} group what it works on
 * @property {string} measure its path in the table of measures; `*` where it holds for both sides
 * @property {string} path where it first stands in the design
 * @property {number} change in the measure's unit
 * @property {number} now
 */

/**
 * A solved top, and the steps away from it.
 * @typedef {object} Steps
 * @property {{ hz: number, name?: string | null, sure_within: number }[]} modes sure_within: one standard deviation of an effect, as a share
 * @property {number} mass_g
 * @property {{ key: string, width_mm: number }[]} narrows
 * @property {WorkshopStep[]} steps
 */

/** @typedef {{ by_mode_hz: number[], mass_g: number, narrows_mm: number[] }} StepEffect what one step adds, to first order */

/**
 * @typedef {object} StepTarget
 * @property {"mode" | "island" | "mass"} what
 * @property {number} mode from zero
 * @property {number} change Hz, dB or g
 * @property {number} [heavier_by_g] most that the mass may grow by
 * @property {number} [narrows_mm] least width of every narrow place
 * @property {boolean} carved wood is only taken off
 * @property {string[]} allowed groups of steps
 * @property {number} steps how far each control may go
 */

/**
 * The smallest change towards a target.
 * @typedef {object} Proposal
 * @property {{ step: number, share: number }[]} changes
 * @property {string} design
 * @property {number | null} [reached] what it really changes, worked out anew
 * @property {number} mass_g
 * @property {number[]} narrows_mm
 */

/**
 * A top with all its modes up to 6 kHz.
 * @typedef {object} Driven
 * @property {number} modes
 * @property {number} nodes
 * @property {number} complete_to_hz
 * @property {number[]} elastic_hz
 * @property {boolean} free nothing holds it
 */

/** @typedef {{ key: string, energy: number, volume: number, phase_deg?: number | null }} DrivenRegion shares; phase against the island */

/**
 * A motion for a newton on the vertices of the standard picture; what it does is told beside it.
 * @typedef {object} DrivenMotion
 * @property {Float32Array} re as in Motion
 * @property {Float32Array} im
 * @property {number} largest_um
 * @property {number} level_db estimated, at a metre
 * @property {DrivenRegion[]} regions
 */

/**
 * @typedef {object} DrivenNote
 * @property {{ hz: number, share: number }[]} harmonics
 * @property {number} largest_um
 * @property {number} frames
 * @property {Float32Array} motion (frame, vertex, 6) over one period
 */

/** @typedef {Record<"hz" | "bass" | "treble" | "transfer" | "volume" | "level_hz" | "level", Float32Array>} DrivenCurves dB */

/** @typedef {{ keys: string[], hz: Float32Array, energy: Float32Array, volume: Float32Array }} WhoMoves (frequency, region) shares */

/** @typedef {{ value: number, sure_within: number }} SureFigure */

/** @typedef {{ before: string, after: string }} LessonDesigns */

/**
 * A lesson's figure before and after its change.
 * @typedef {object} LessonOutcome
 * @property {SureFigure} before
 * @property {SureFigure} after
 * @property {number} change
 * @property {number} change_within
 * @property {boolean} same_board whether both tops are of one board
 * @property {boolean} shown whether the figure does what the lesson says
 * @property {string} unit of the figure, empty for a pure number
 * @property {"%" | "points" | "dB"} change_unit
 */

/**
 * @typedef {object} DrivenFigures
 * @property {SureFigure | null} [island_mobility_db]
 * @property {SureFigure | null} [wing_activity]
 * @property {SureFigure} bass_over_treble_db
 */

/** @typedef {{ samples: Float32Array, peaks: { hz: number, level_db: number, ring_s: number }[] }} TapTone */

/** @typedef {{ from_hz: number, to_hz: number, points: number }} Span of frequencies, of equal ratio */

/** @typedef {{ key: string, name: string, source: string }} Species whose means are built in */

/**
 * The wood of a design with every constant known.
 * @typedef {object} WoodFigures
 * @property {number} density_kg_m3
 * @property {number} speed_along_m_s
 * @property {number} speed_across_m_s
 * @property {Record<string, number>} constants e_l_gpa, ..., nu_rt
 */

/** @typedef {{ bar: object, post: object, ribs: object }} Fittings as they stand in a design */

/** @typedef {{ word: string, name: string, design: string }} Preset an invented design to start from */

/** @typedef {"curtate_cycloid" | "arc_with_reverse_arc" | "spline"} ArchFamily */

/**
 * One arch as it is drawn. Lengths in mm, from the crest; the long arch's are its lower half's.
 * @typedef {object} Arch
 * @property {string} arch "long_arch", "waist", "waist.bass", "extra.0" and so on
 * @property {ArchFamily} family
 * @property {number} fullness mean height over the rise
 * @property {number} station_mm from the bottom edge
 * @property {number} half_span_mm to the channel line
 * @property {number} rise_mm above the channel line
 * @property {number} inflection_mm where it turns from convex to concave
 */

/**
 * What is to be changed of an arch, where only the core can say what that comes to in numbers.
 * @typedef {{ family: ArchFamily } | { inflection_mm: number }} ArchChange
 */

/** @typedef {{ kind: string } & Record<string, unknown>} Hole a sound hole as it stands in a design */

/**
 * What a hole measures.
 * @typedef {object} HoleFigures
 * @property {boolean} treble_side
 * @property {number} area_mm2
 * @property {number} perimeter_mm
 * @property {number | null} [lean_deg] of an f-hole
 */

/**
 * A region of the top, or the strip under the bar.
 * @typedef {object} Region
 * @property {string} key
 * @property {string} path SVG path data on the plan's sheet
 * @property {number} area_mm2
 * @property {number} mass_g
 * @property {number} mean_thickness_mm
 * @property {number | null} [narrowest_mm]
 * @property {string | null} [narrowest_path] the line along which it is narrowest
 */

/** @typedef {{ regions: Region[], throats: { key: string, width_mm: number }[] }} Regions the throats by their wings */

/**
 * What the wood is at one place.
 * @typedef {{ height_mm: number, thickness_mm: number, slope_deg: number, curvature_per_m: number, region: string }} PlaceFigures
 */

/**
 * What a motion does with the regions; amplitudes are [re, im] in the motion field's millimetres.
 * @typedef {object} Movement
 * @property {{ key: string, share: number }[]} shares of the kinetic energy
 * @property {[number, number] | null} [island_lift]
 * @property {{ key: string, amplitude: [number, number] }[]} flaps of the wings, beyond going along with the island
 */

/**
 * How like each other the modes of two tops are by shape.
 * @typedef {object} ShapeLikeness
 * @property {Float32Array} likeness (mode of a, mode of b) from -1, the same the other way round, to 1; squared, the modal assurance
 * criterion
 * @property {Float32Array} partners (mode of a) the mode of b with its shape, from 1, or 0 where it has none
 */

/** @typedef {{ keys: string[], indices: Float32Array }} RegionsAt (place) an index of the regions' keys */

/**
 * Thickness over the plan; places on the plan's sheet.
 * @typedef {object} Thickness
 * @property {Place} low of the first value
 * @property {number} step_mm between values
 * @property {number} columns
 * @property {Float32Array} values (row, column) mm, rows downwards, NaN off the wood
 * @property {number} thinnest_mm
 * @property {number} thickest_mm
 * @property {{ thickness_mm: number, path: string, number_at?: Place | null }[]} contours a number where there is room for it
 * @property {number} mass_g
 * @property {number} density_kg_m3
 * @property {string} edges SVG path data of edge and holes
 */

/** @typedef {{ size: number, path: string }} Code SVG path data of what is dark on a square of that side, its light border in it */

/**
 * An error as a value, with text for people.
 * @typedef {object} Problem
 * @property {string} kind stable snake_case word
 * @property {string} message one plain sentence
 * @property {string} [path] which value of the design
 * @property {string} [value] what it was
 * @property {string} [limits] what it may be
 * @property {string} [remedy] what to do
 */

/**
 * A mode that a solve or, where it is not proven, a follow of the same gives.
 * @typedef {{ design: string, size: MeshSize, count: number, mode: number, proven: boolean }} OfMode
 */

/**
 * What each kind of request sends and what its reply holds. A design is its JSON text.
 * @typedef {object} Exchange
 * @property {{ send: object, get: string }} demo the demonstration design
 * @property {{ send: { json: string }, get: string }} open a design from outside, checked strictly; the reply is the
 * same text, known to be good
 * @property {{ send: { design: string, size: MeshSize }, get: Picture }} shape the picture alone
 * @property {{ send: { design: string, size: MeshSize, count: number, wish: ModeWish }, get: Step }} follow
 * @property {{ send: { design: string, size: MeshSize, count: number, wish: ModeWish, kin?: Kin }, get: Solution }} solve
 * @property {{ send: OfMode, get: Motion }} motion of a mode
 * @property {{ send: OfMode, get: Float32Array }} strain_energy (node) per volume, over its mean
 * @property {{ send: OfMode, get: Float32Array }} signatures (mode, place) of all modes there: see ShapeLikeness
 * @property {{ send: { design: string, size: MeshSize, count: number }, get: Surety[] }} surety of the modes that a solve of
 * the same gives
 * @property {{ send: { design: string }, get: Drawings }} drawings this and what follows the drawing board answers
 * @property {{ send: { design: string }, get: Arching }} arching
 * @property {{ send: { design: string, what: string, places_mm: Float32Array }, get: Float32Array }} quantity (place): "height"
 * mm, "thickness" mm, "slope" degrees or "curvature" 1/m at each place in plan, (place, xy)
 * @property {{ send: { design: string, x_mm: number, y_mm: number }, get: PlaceFigures | undefined }} place nothing off the wood
 * @property {{ send: { design: string, places_mm: Float32Array }, get: RegionsAt }} regions_at (place, xy) each on the wood
 * @property {{ send: { design: string, nodes: Float32Array, re: Float32Array, im: Float32Array }, get: Movement }} movement nodes
 * (node, [x, y, volume]), re and im (node, [outward, x, y, z])
 * @property {{ send: object, get: MeasureLimits[] }} measures
 * @property {{ send: object, get: Preset[] }} presets
 * @property {{ send: object, get: Species[] }} species
 * @property {{ send: { design: string }, get: Fittings }} usual_fittings on a top of this size
 * @property {{ send: { design: string }, get: WoodFigures }} wood
 * @property {{ send: { design: string }, get: Arch[] }} arches
 * @property {{ send: { design: string, arch: string, change: ArchChange }, get: string }} reshape the changed design
 * @property {{ send: { design: string, treble: boolean, pattern: string }, get: Hole }} equal_hole that opens as much as the
 * one on that side
 * @property {{ send: { design: string }, get: HoleFigures[] }} holes bass first
 * @property {{ send: { design: string, treble: boolean, lean_deg: number }, get: Hole }} leaning_hole
 * @property {{ send: { design: string, treble: boolean, d: string, mm_from_path: number[] }, get: Hole }} traced_hole
 * @property {{ send: { design: string }, get: Regions }} regions
 * @property {{ send: { text: string }, get: Code }} qr_code
 * @property {{ send: { a: Float32Array, b: Float32Array, modes_of_b: number }, get: ShapeLikeness }} compare_shapes by the signatures
 * (mode, place) of two tops' modes
 * @property {{ send: { design: string }, get: Thickness }} thickness
 * @property {{ send: { design: string }, get: Driven }} driven this and what follows the driven top answers
 * @property {{ send: { design: string, drive: Drive, hz: number }, get: DrivenMotion }} driven_motion
 * @property {{ send: { design: string, bridge_hz?: number, hz: number }, get: DrivenNote }} driven_note
 * @property {{ send: { design: string, drive: Drive, to_mm: [number, number] } & Span, get: DrivenCurves }} driven_curves
 * @property {{ send: { design: string, drive: Drive } & Span, get: WhoMoves }} who_moves
 * @property {{ send: { design: string }, get: DrivenFigures }} driven_figures
 * @property {{ send: { design: string, place_mm: [number, number], rate_hz: number }, get: TapTone }} tap_tone
 * @property {{ send: { json: string }, get: LessonDesigns }} lesson a lesson's document, checked
 * @property {{ send: { json: string }, get: LessonOutcome }} lesson_outcome
 * @property {{ send: { design: string }, get: Steps }} steps this and what follows the step bench answers
 * @property {{ send: { design: string, step: number }, get: StepEffect }} step_effect
 * @property {{ send: { design: string, step: number }, get: DrivenFigures }} step_response
 * @property {{ send: { design: string, step: number, share: number }, get: string }} stepped the design after a share of a step
 * @property {{ send: { design: string, target: StepTarget }, get: Proposal }} proposal
 * @property {{ send: { design: string, mass_g: number }, get: { change_mm: number, design: string } }} to_mass every thickness
 * changed alike
 * @property {{ send: { design: string, file: ArrayBuffer }, get: string }} with_thicknesses the design with those of a table
 */

/** @typedef {keyof Exchange} RequestKind */

/**
 * @template {RequestKind} K
 * @typedef {{ kind: K, id: number } & Exchange[K]["send"]} RequestOf
 */

/** @typedef {{ [K in RequestKind]: RequestOf<K> }[RequestKind]} Request */

/**
 * The first message to a worker: its module, compiled once by the page and shared by every restart, and how it learns what was called off.
 * @typedef {{ kind: "start", module: WebAssembly.Module, recall?: import("./recall.js").Recall }} Start
 */

/**
 * @typedef {{ id: number, outcome: "done", value: Exchange[RequestKind]["get"] }
 *   | { id: number, outcome: "problem", problem: Problem }
 *   | { id: number, outcome: "superseded" }
 *   | { id: number, outcome: "crashed", text: string }} Reply
 */

export {};
