// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// What the builder built, in the builder's own units: every member is named as in the setup file
/// and carries its unit, so that a number goes through load, edit and save without being touched.
/// The physics takes SI; the one step from here to SI is core/craft/craft.h.
///
/// Axes: x forward, y left, z up; datum at the middle of the airframe's centre plate.
namespace stillbay {

using Triple = std::array<double, 3>;

/// Members of a JSON object that this version does not know: key and the raw JSON text of its
/// value, in file order. They are written back where they were found.
using Extras = std::vector<std::pair<std::string, std::string>>;

/// A uniform box: part of the airframe or of the bay.
struct Part {
    std::string name;
    double mass_g = 100.0;
    Triple centre_mm{};
    Triple size_mm{50.0, 50.0, 20.0};
    Extras extras;

    bool operator==(const Part&) const = default;
};

/// Section and material that all arms share.
struct ArmSection {
    double width_mm = 14.0;
    double height_mm = 14.0;
    std::optional<double> wall_mm;  ///< none: solid
    double density_kg_m3 = 520.0;
    double youngs_modulus_gpa = 10.0;
    double shear_modulus_gpa = 0.7;
    double loss_factor = 0.01;
    std::optional<double> root_stiffness_nm_per_rad;  ///< none: rigid root
    Extras extras;

    bool operator==(const ArmSection&) const = default;
};

/// One arm, from its root outwards, level.
struct Arm {
    double azimuth_deg = 0.0;
    double root_radius_mm = 60.0;
    double length_mm = 190.0;
    double height_mm = 0.0;
    std::optional<double> unbalance_g_mm;  ///< of its motor with propeller; none: the common one
    Extras extras;

    bool operator==(const Arm&) const = default;
};

struct Airframe {
    std::vector<Part> parts;
    ArmSection arm;
    std::vector<Arm> arms;
    Extras extras;

    bool operator==(const Airframe&) const = default;
};

struct Motor {
    double kv_rpm_per_v = 880.0;
    double resistance_mohm = 110.0;
    double no_load_current_a = 0.6;
    double mass_g = 62.0;
    double height_above_arm_mm = 25.0;
    std::optional<double> diameter_mm;  ///< none: estimated from the mass
    std::optional<double> height_mm;    ///< of the body; none: estimated from the diameter
    Extras extras;

    bool operator==(const Motor&) const = default;
};

struct Propeller {
    double diameter_in = 10.0;
    double pitch_in = 4.5;
    int blades = 2;
    double mass_g = 13.0;
    std::optional<double> thrust_coefficient;   ///< T/(ρ n² D⁴), n in rev/s; none: estimated
    std::optional<double> power_coefficient;    ///< P/(ρ n³ D⁵), n in rev/s; none: estimated
    std::optional<double> inertia_g_mm2;        ///< about the axis; none: estimated
    std::optional<double> height_above_arm_mm;  ///< none: the motor's
    Extras extras;

    bool operator==(const Propeller&) const = default;
};

struct Battery {
    int cells = 4;
    double full_v_per_cell = 4.2;
    double empty_v_per_cell = 3.5;
    double resistance_mohm = 20.0;
    Extras extras;

    bool operator==(const Battery&) const = default;
};

/// Pairs [throttle, duty], both rising: what a speed controller makes of the throttle stick.
using ThrottleCurve = std::vector<std::array<double, 2>>;

struct Drive {
    Motor motor;
    Propeller propeller;
    Battery battery;
    double unbalance_g_mm = 4.0;
    std::vector<double> blade_pass_thrust_fraction{0.03,
                                                   0.01};  ///< of one motor's thrust: B, 2B, …
    ThrottleCurve throttle_curve;                          ///< none: the duty is the throttle
    Extras extras;

    bool operator==(const Drive&) const = default;
};

struct Bay {
    std::vector<Part> parts;
    double travel_mm = 8.0;  ///< free gap between the bay at rest and whatever it would hit
    Extras extras;

    bool operator==(const Bay&) const = default;
};

/// How a lens maps angles: a straight line stays straight, or the distance from the picture's
/// middle grows in proportion to the angle (equidistant).
enum class Lens { Rectilinear, Fisheye };

struct Camera {
    Triple centre_mm{};
    double tilt_down_deg = 0.0;
    int width_px = 3840;
    int height_px = 2160;
    double horizontal_fov_deg = 80.0;
    double frame_rate_hz = 30.0;
    double readout_ms = 16.0;
    double exposure_ms = 2.0;
    Lens lens = Lens::Rectilinear;
    Extras extras;

    bool operator==(const Camera&) const = default;
};

struct TubeKind {
    double outer_diameter_mm = 8.0;
    double bore_mm = 5.0;
    double hardness_shore_a = 60.0;
    std::optional<double> youngs_modulus_mpa;  ///< none: from the hardness
    double dynamic_ratio = 1.25;
    double loss_factor = 0.12;
    double density_kg_m3 = 1150.0;
    double max_stretch = 1.6;
    Extras extras;

    bool operator==(const TubeKind&) const = default;
};

enum class Ends { Clamped, Hinged };

/// Where one tube holds the bay. Either angles (planning) or an anchor hole (drilled).
struct MountPoint {
    Triple bay_mm{};
    double azimuth_deg = 0.0;         ///< from the bay point to the airframe anchor; planning only
    double elevation_deg = 0.0;       ///< likewise, above the horizontal; planning only
    std::optional<Triple> anchor_mm;  ///< set: the airframe's hole; drilled only
    std::optional<double> free_length_mm;  ///< this tube's own; none: the common one
    std::optional<double> stretch;         ///< likewise; planning only
    Extras extras;

    bool operator==(const MountPoint&) const = default;
};

struct Mounts {
    double free_length_mm = 20.0;
    std::optional<double> stretch = 1.15;  ///< none in a drilled craft
    Ends ends = Ends::Clamped;
    std::vector<MountPoint> points;
    Extras extras;

    /// The holes exist: each tube's stretch follows from its own distance.
    bool drilled() const { return !points.empty() && points.front().anchor_mm.has_value(); }

    bool operator==(const Mounts&) const = default;
};

/// How a film looked.
enum class Seen { Clean, Faint, Bad };

/// What the builder saw in a film of one stretch of throttle.
struct FlightNote {
    double from = 0.0;  ///< throttle
    double to = 1.0;
    Seen seen = Seen::Clean;
    std::string note;
    Extras extras;

    bool operator==(const FlightNote&) const = default;
};

struct Flight {
    double air_density_kg_m3 = 1.2;
    std::array<double, 2> cruise_throttle{0.25, 0.6};
    std::vector<FlightNote> notes;
    Extras extras;

    bool operator==(const Flight&) const = default;
};

struct Limits {
    double faint_px = 0.3;
    double bad_px = 1.0;
    Extras extras;

    bool operator==(const Limits&) const = default;
};

/// What is cut and how it is mounted: what a tune keeps and a search chooses.
struct Design {
    TubeKind tube;
    Mounts mounts;
    /// Centre of the bay's heaviest part [mm]; none: where the craft has it.
    std::optional<Triple> heaviest_part_mm = {};

    bool operator==(const Design&) const = default;
};

/// A kept tune: tube and mounts as they were when the builder kept them.
struct Tune {
    std::string name;
    std::string saved;  ///< ISO 8601, UTC
    std::string notes;
    Design design;
    Extras extras;

    bool operator==(const Tune&) const = default;
};

/// What a recording is taken for.
enum class RecordingKind {
    Pluck,  ///< the bay plucked on the bench
    Tap,    ///< an arm tapped
    Sweep,  ///< the throttle run through, with sensors on airframe and bay, or on one of them
    Sound,  ///< the rotors heard
    Film,
};

/// What a column of a table of numbers holds.
enum class ColumnRole {
    Unused,
    Time,
    Acceleration,
    AngularRate,
    Sound,
    Throttle,
    RotorSpeed,
    Other,
};

/// A column that the builder reads otherwise than it was guessed.
struct ReadColumn {
    std::string name;  ///< as in the recording
    ColumnRole role = ColumnRole::Unused;
    std::string unit;  ///< as in the window's list; empty: as guessed
    Extras extras;

    bool operator==(const ReadColumn&) const = default;
};

/// A recording that belongs to the craft; it stays where it is and is never copied.
struct NamedRecording {
    std::string file;  ///< in the craft's file: as seen from there
    RecordingKind kind = RecordingKind::Pluck;
    std::optional<double> rate_hz;   ///< none: as guessed
    std::optional<double> from_s;    ///< of the part that is used; none: from the beginning
    std::optional<double> to_s;      ///< likewise; none: to the end
    std::optional<double> arm;       ///< the tapped one, from 1; none: the first
    std::optional<double> throttle;  ///< of the stick while it was filmed; none: not known
    std::optional<Triple> sensor_mm;
    std::optional<double> sensor_mass_g;
    std::string sensor_axes;  ///< where x, y and z of the sensor point: "-y:x:z"; empty: not known
    std::vector<ReadColumn> columns;
    Extras extras;

    bool operator==(const NamedRecording&) const = default;
};

/// Where a value comes from.
enum class Origin { Typical, Label, Measured, Estimated };

/// Where one number of the setup comes from, and how sure it is.
struct Source {
    std::string key;  ///< path of the number, "tube.youngs_modulus_mpa"
    Origin from = Origin::Typical;
    std::optional<double> spread;  ///< one standard deviation over the value; none: the usual one
    std::string note;
    std::string date;
    Extras extras;

    bool operator==(const Source&) const = default;
};

/// Everything the builder can save, undo and share. A plain value.
struct Setup {
    std::string name;
    std::string notes;
    Airframe airframe;
    Drive drive;
    Bay bay;
    Camera camera;
    TubeKind tube;
    Mounts mounts;
    Flight flight;
    Limits limits;
    std::vector<Source> sources;  ///< in file order, each key once
    std::vector<NamedRecording> recordings;
    std::vector<Tune> tunes;
    Extras extras;

    bool operator==(const Setup&) const = default;
};

}  // namespace stillbay
