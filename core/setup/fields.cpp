// SPDX-License-Identifier: MIT
#include "core/setup/fields.h"

#include "core/base/phrase.h"

// Ranges reach from a palm-size craft to a lifter of about 20 kg. They keep out slips of the
// keyboard and numbers that the physics cannot take; they do not judge whether a craft is wise.
namespace stillbay {
namespace {

constexpr Presence kRequired = Presence::Required;
constexpr Presence kOptional = Presence::Optional;
constexpr Presence kWrittenWhereSet = Presence::WrittenWhereSet;

constexpr Field<Part> kPartFields[] = {
    {"mass_g", translatable("Mass"), "g",
     translatable("What the part weighs on the kitchen scale, screws and cables included."), 0.1,
     20000, 1, 1, kRequired, &Part::mass_g},
    {"centre_mm", translatable("Centre"), "mm",
     translatable(
         "Where the part's middle sits, measured from the middle of the centre plate: forward, "
         "left, "
         "up."),
     -2000, 2000, 1, 1, kRequired, &Part::centre_mm},
    {"size_mm", translatable("Size"), "mm",
     translatable("The box that just holds the part: along, across, high."), 0.1, 2000, 1, 1,
     kRequired, &Part::size_mm},
};

constexpr Field<ArmSection> kArmSectionFields[] = {
    {"width_mm", translatable("Width"), "mm",
     translatable("How wide the arm is seen from above, by calliper."), 1, 200, 0.5, 2, kRequired,
     &ArmSection::width_mm},
    {"height_mm", translatable("Height"), "mm",
     translatable("How high the arm is seen from the side, by calliper."), 1, 200, 0.5, 2,
     kRequired, &ArmSection::height_mm},
    {"wall_mm", translatable("Wall"), "mm",
     translatable("Wall of a hollow arm; empty for a solid one."), 0.1, 100, 0.1, 2, kOptional,
     &ArmSection::wall_mm},
    {"density_kg_m3", translatable("Density"), "kg/m³",
     translatable("Weigh a piece of the arm and divide by the volume of its material."), 20, 20000,
     10, 0, kRequired, &ArmSection::density_kg_m3},
    {"youngs_modulus_gpa", translatable("Young's modulus"), "GPa",
     translatable(
         "How stiff the material is along the arm: from a data sheet, or from the droop of an arm "
         "clamped at its root with a weight on its tip."),
     0.05, 1000, 0.5, 2, kRequired, &ArmSection::youngs_modulus_gpa},
    {"shear_modulus_gpa", translatable("Shear modulus"), "GPa",
     translatable("How stiff the material is against twisting: from a data sheet; wood is near a "
                  "fifteenth of "
                  "its Young's modulus, metal near three eighths."),
     0.005, 500, 0.1, 3, kRequired, &ArmSection::shear_modulus_gpa},
    {"loss_factor", translatable("Loss factor"), "",
     translatable(
         "How quickly a tapped arm falls silent: metal about 0.002, wood and glued laminates about "
         "0.01."),
     0, 1, 0.001, 4, kOptional, &ArmSection::loss_factor},
    {"root_stiffness_nm_per_rad", translatable("Root stiffness"), "N·m/rad",
     translatable(
         "How much the joint at the arm's root gives, about all three axes; empty for a rigid "
         "joint."),
     0.1, 1e6, 10, 1, kOptional, &ArmSection::root_stiffness_nm_per_rad},
};

constexpr Field<Arm> kArmFields[] = {
    {"azimuth_deg", translatable("Direction"), "°",
     translatable("Where the arm points seen from above: 0 forward, 90 left, 180 back."), -360, 360,
     1, 1, kRequired, &Arm::azimuth_deg},
    {"root_radius_mm", translatable("Root radius"), "mm",
     translatable("From the middle of the centre plate to where the arm leaves its clamp."), 0,
     1000, 1, 1, kRequired, &Arm::root_radius_mm},
    {"length_mm", translatable("Length"), "mm",
     translatable("From the edge of the clamp to the motor's axis."), 5, 2000, 1, 1, kRequired,
     &Arm::length_mm},
    {"height_mm", translatable("Height"), "mm",
     translatable(
         "How far the arm's middle line lies above the middle of the centre plate; below is "
         "negative."),
     -500, 500, 1, 1, kOptional, &Arm::height_mm},
    {"unbalance_g_mm", translatable("Own unbalance"), "g·mm",
     translatable("Residual unbalance of this arm's motor with its propeller; empty where it is "
                  "as the others'."),
     0, 1000, 0.5, 2, kWrittenWhereSet, &Arm::unbalance_g_mm},
};

constexpr Field<Motor> kMotorFields[] = {
    {"kv_rpm_per_v", translatable("KV"), "rpm/V",
     translatable("Revolutions a minute for each volt without load, printed on the motor."), 10,
     50000, 10, 0, kRequired, &Motor::kv_rpm_per_v},
    {"resistance_mohm", translatable("Resistance"), "mΩ",
     translatable(
         "Winding resistance between two of the motor's leads, from a milliohm meter or the data "
         "sheet; add what the speed controller and its wires have."),
     1, 10000, 1, 1, kRequired, &Motor::resistance_mohm},
    {"no_load_current_a", translatable("No-load current"), "A",
     translatable("What the motor draws spinning without a propeller."), 0, 20, 0.1, 2, kOptional,
     &Motor::no_load_current_a},
    {"mass_g", translatable("Mass"), "g",
     translatable("One motor with its screws and the wire along the arm."), 0.1, 5000, 1, 1,
     kRequired, &Motor::mass_g},
    {"height_above_arm_mm", translatable("Height above arm"), "mm",
     translatable(
         "From the arm's middle line up to the middle of the motor; negative when it hangs "
         "below."),
     -300, 300, 1, 1, kRequired, &Motor::height_above_arm_mm},
    {"diameter_mm", translatable("Diameter"), "mm",
     translatable("The motor's body across, by calliper; empty to estimate it from the mass."), 1,
     300, 0.5, 1, kOptional, &Motor::diameter_mm},
    {"height_mm", translatable("Body height"), "mm",
     translatable("The motor's body from its foot to its top, without shaft and nut; empty to "
                  "estimate it from the diameter."),
     1, 300, 0.5, 1, kOptional, &Motor::height_mm},
};

constexpr Field<Propeller> kPropellerFields[] = {
    {"diameter_in", translatable("Diameter"), "in",
     translatable("Tip to tip, the first of the two numbers on the propeller."), 0.5, 60, 0.5, 2,
     kRequired, &Propeller::diameter_in},
    {"pitch_in", translatable("Pitch"), "in",
     translatable("The second of the two numbers on the propeller."), 0.1, 60, 0.1, 2, kRequired,
     &Propeller::pitch_in},
    {"blades", translatable("Blades"), "", translatable("How many blades one propeller has."), 2, 8,
     1, 0, kOptional, &Propeller::blades},
    {"mass_g", translatable("Mass"), "g",
     translatable("One propeller with its nut, on the kitchen scale."), 0.05, 2000, 1, 2, kRequired,
     &Propeller::mass_g},
    {"thrust_coefficient", translatable("Thrust coefficient"), "",
     translatable(
         "Thrust over air density × turns per second² × diameter⁴, from a thrust stand; empty to "
         "estimate it from pitch, diameter and blades."),
     0.005, 0.5, 0.001, 4, kOptional, &Propeller::thrust_coefficient},
    {"power_coefficient", translatable("Power coefficient"), "",
     translatable(
         "Shaft power over air density × turns per second³ × diameter⁵, from a thrust stand; "
         "empty to "
         "estimate it from pitch, diameter and blades."),
     0.001, 0.5, 0.001, 4, kOptional, &Propeller::power_coefficient},
    {"inertia_g_mm2", translatable("Moment of inertia"), "g·mm²",
     translatable("How hard the propeller is to spin up about its axis, from a swing on two "
                  "threads; empty to estimate it from mass and diameter."),
     0.1, 1e9, 100, 1, kOptional, &Propeller::inertia_g_mm2},
    {"height_above_arm_mm", translatable("Height above arm"), "mm",
     translatable("From the arm's middle line up to the middle of the blades; negative when they "
                  "turn below, empty for the motor's height."),
     -300, 300, 1, 1, kOptional, &Propeller::height_above_arm_mm},
};

constexpr Field<Battery> kBatteryFields[] = {
    {"cells", translatable("Cells in series"), "",
     translatable("How many cells the pack has in a row, printed on it."), 1, 24, 1, 0, kRequired,
     &Battery::cells},
    {"full_v_per_cell", translatable("Full voltage"), translatable("V per cell"),
     translatable("One cell's voltage fresh off the charger."), 0.8, 5, 0.05, 2, kOptional,
     &Battery::full_v_per_cell},
    {"empty_v_per_cell", translatable("Empty voltage"), translatable("V per cell"),
     translatable("One cell's voltage when you land."), 0.8, 5, 0.05, 2, kOptional,
     &Battery::empty_v_per_cell},
    {"resistance_mohm", translatable("Pack resistance"), "mΩ",
     translatable("What the whole pack and its plug have, as a good charger shows it."), 0, 2000, 1,
     1, kOptional, &Battery::resistance_mohm},
};

constexpr Field<Drive> kDriveFields[] = {
    {"unbalance_g_mm", translatable("Unbalance"), "g·mm",
     translatable(
         "Residual unbalance of one motor with its propeller: the tape that balanced it, in grams, "
         "times its distance from the axis; about 1 carefully balanced, several out of the bag."),
     0, 1000, 0.5, 2, kOptional, &Drive::unbalance_g_mm},
    {"blade_pass_thrust_fraction", translatable("Blade-pass pulse"), "",
     translatable(
         "How strongly thrust pulses each time a blade passes its arm, as a share of one motor's "
         "thrust, then for twice that rate, and so on."),
     0, 1, 0.005, 4, kOptional, &Drive::blade_pass_thrust_fraction},
};

constexpr Field<Bay> kBayFields[] = {
    {"travel_mm", translatable("Free travel"), "mm",
     translatable("The smallest gap between the hanging bay and whatever it would hit first."), 0.1,
     200, 0.5, 1, kOptional, &Bay::travel_mm},
};

constexpr Field<Camera> kCameraFields[] = {
    {"centre_mm", translatable("Position"), "mm",
     translatable(
         "Where the lens sits, measured from the middle of the centre plate: forward, left, up."),
     -2000, 2000, 1, 1, kRequired, &Camera::centre_mm},
    {"tilt_down_deg", translatable("Tilt down"), "°",
     translatable("How far the camera looks down: 0 at the horizon, 90 straight at the ground."),
     -90, 90, 1, 1, kOptional, &Camera::tilt_down_deg},
    {"width_px", translatable("Picture width"), "px",
     translatable("Pixels across one frame of the film."), 16, 20000, 1, 0, kRequired,
     &Camera::width_px},
    {"height_px", translatable("Picture height"), "px",
     translatable("Pixels down one frame of the film."), 16, 20000, 1, 0, kRequired,
     &Camera::height_px},
    {"horizontal_fov_deg", translatable("Horizontal field of view"), "°",
     translatable(
         "How wide the lens sees from edge to edge: film a ruler and take twice the arctangent of "
         "half its visible length over its distance."),
     0.5, 220, 1, 1, kRequired, &Camera::horizontal_fov_deg},
    {"frame_rate_hz", translatable("Frame rate"), "Hz",
     translatable("Frames a second as set in the camera."), 1, 2000, 1, 2, kRequired,
     &Camera::frame_rate_hz},
    {"readout_ms", translatable("Readout time"), "ms",
     translatable(
         "Time from the first to the last row of one frame; 0 for a global shutter. Film a lamp "
         "that "
         "flickers at a known rate and count its stripes."),
     0, 1000, 0.5, 2, kRequired, &Camera::readout_ms},
    {"exposure_ms", translatable("Exposure"), "ms",
     translatable(
         "How long one row collects light: 2 ms is a shutter of 1/500 s. A darker filter makes it "
         "longer."),
     0.001, 1000, 0.1, 3, kOptional, &Camera::exposure_ms},
};

constexpr Field<TubeKind> kTubeFields[] = {
    {"outer_diameter_mm", translatable("Outer diameter"), "mm",
     translatable("Of the tube lying relaxed, by calliper."), 0.5, 100, 0.5, 2, kRequired,
     &TubeKind::outer_diameter_mm},
    {"bore_mm", translatable("Bore"), "mm",
     translatable("Inner diameter of the relaxed tube; 0 for a solid cord."), 0, 99, 0.5, 2,
     kRequired, &TubeKind::bore_mm},
    {"hardness_shore_a", translatable("Hardness"), "Shore A",
     translatable(
         "As sold; soft silicone is about 40, firm about 70. A measured modulus replaces it."),
     5, 95, 1, 1, kRequired, &TubeKind::hardness_shore_a},
    {"youngs_modulus_mpa", translatable("Young's modulus"), "MPa",
     translatable(
         "From your own hang test, which beats the printed hardness; empty to take it from the "
         "hardness."),
     0.01, 200, 0.05, 3, kOptional, &TubeKind::youngs_modulus_mpa},
    {"dynamic_ratio", translatable("Dynamic ratio"), "",
     translatable("How much stiffer the rubber is when vibrating than when loaded slowly: a pluck "
                  "test measures it; 1.1 to 1.4 is usual for silicone."),
     1, 5, 0.05, 3, kOptional, &TubeKind::dynamic_ratio},
    {"loss_factor", translatable("Loss factor"), "",
     translatable(
         "How quickly a plucked bay comes to rest: twice the damping ratio; about 0.05 for "
         "lively and "
         "0.2 for dull silicone."),
     0, 2, 0.01, 3, kOptional, &TubeKind::loss_factor},
    {"density_kg_m3", translatable("Density"), "kg/m³",
     translatable("Weigh a length of tube and divide by the volume of its rubber."), 100, 5000, 10,
     0, kOptional, &TubeKind::density_kg_m3},
    {"max_stretch", translatable("Stretch limit"), "",
     translatable("Largest length over relaxed length you trust the tube with for a season."), 1, 4,
     0.05, 2, kOptional, &TubeKind::max_stretch},
};

constexpr Field<Design> kDesignFields[] = {
    {"heaviest_part_mm", translatable("Place of the heaviest part"), "mm",
     translatable("Where the middle of the bay's heaviest part sits with this tune: forward, left, "
                  "up; empty to leave it where it is."),
     -2000, 2000, 1, 1, kWrittenWhereSet, &Design::heaviest_part_mm},
};

constexpr Field<MountPoint> kMountPointFields[] = {
    {"bay_mm", translatable("Bay point"), "mm",
     translatable(
         "Where the tube's clamp on the bay ends, with the bay held as drawn, from the middle of "
         "the "
         "centre plate: forward, left, up."),
     -2000, 2000, 1, 1, kRequired, &MountPoint::bay_mm},
    {"azimuth_deg", translatable("Direction"), "°",
     translatable(
         "Where the tube points seen from above, from the bay to the airframe: 0 forward, 90 "
         "left."),
     -360, 360, 1, 1, kRequired, &MountPoint::azimuth_deg},
    {"elevation_deg", translatable("Elevation"), "°",
     translatable(
         "How steeply the tube goes up from the bay to the airframe; 0 is level, 90 straight up."),
     -90, 90, 0.5, 1, kRequired, &MountPoint::elevation_deg},
    {"anchor_mm", translatable("Airframe hole"), "mm",
     translatable(
         "Where the tube's clamp on the airframe ends once the holes are drilled, from the "
         "middle of "
         "the centre plate: forward, left, up."),
     -2000, 2000, 1, 1, kOptional, &MountPoint::anchor_mm},
    {"free_length_mm", translatable("Own free length"), "mm",
     translatable(
         "Length of this one relaxed tube between its two clamps; empty where it is cut like the "
         "others."),
     1, 500, 0.5, 2, kWrittenWhereSet, &MountPoint::free_length_mm},
    {"stretch", translatable("Own stretch"), "",
     translatable("How much longer this one tube is fitted than its free length; empty where it is "
                  "stretched like the others, and once the holes are drilled."),
     0.7, 3, 0.01, 4, kWrittenWhereSet, &MountPoint::stretch},
};

constexpr Field<Mounts> kMountsFields[] = {
    {"free_length_mm", translatable("Free length"), "mm",
     translatable(
         "Length of the relaxed tube between its two clamps; cut it longer by what the clamps "
         "hold."),
     1, 500, 0.5, 1, kRequired, &Mounts::free_length_mm},
    {"stretch", translatable("Stretch"), "",
     translatable(
         "Length as fitted over free length: 1.15 is 15 % longer. Empty once the holes are "
         "drilled: "
         "they decide it."),
     0.7, 3, 0.01, 3, kOptional, &Mounts::stretch},
};

constexpr Field<Flight> kFlightFields[] = {
    {"air_density_kg_m3", translatable("Air density"), "kg/m³",
     translatable("1.2 near the sea in mild weather, about 1.0 at 1800 m."), 0.3, 2, 0.01, 3,
     kOptional, &Flight::air_density_kg_m3},
    {"cruise_throttle", translatable("Cruise throttle"), "",
     translatable("The throttle you film at, from and to: 0.25 is a quarter."), 0, 1, 0.01, 3,
     kOptional, &Flight::cruise_throttle},
};

constexpr Field<FlightNote> kFlightNoteFields[] = {
    {"from", translatable("From throttle"), "",
     translatable("The lowest throttle at which it was seen: 0.4 is 40 %."), 0, 1, 0.01, 3,
     kRequired, &FlightNote::from},
    {"to", translatable("To throttle"), "",
     translatable("The highest throttle at which it was seen: 0.47 is 47 %."), 0, 1, 0.01, 3,
     kRequired, &FlightNote::to},
};

constexpr Field<Limits> kLimitsFields[] = {
    {"faint_px", translatable("Faint from"), "px",
     translatable("Wobble from which a keen eye sees it, rms in film pixels."), 0.001, 1000, 0.05,
     3, kOptional, &Limits::faint_px},
    {"bad_px", translatable("Bad from"), "px",
     translatable("Wobble from which the film is spoilt, rms in film pixels."), 0.001, 1000, 0.05,
     3, kOptional, &Limits::bad_px},
};

constexpr Field<Source> kSourceFields[] = {
    {"spread", translatable("Spread"), "",
     translatable("How far the value may be off, one standard deviation over the value: 0.05 is 5 "
                  "%; empty for what is usual of its origin."),
     0.0001, 2, 0.01, 4, kOptional, &Source::spread},
};

constexpr Field<NamedRecording> kRecordingFields[] = {
    {"rate_hz", translatable("Sample rate"), "Hz",
     translatable("How many samples a second; empty for what the recording's own stamps say."),
     0.01, 1e7, 1, 3, kWrittenWhereSet, &NamedRecording::rate_hz},
    {"from_s", translatable("From"), "s",
     translatable("Where the part that is used begins, in seconds of the recording; empty for its "
                  "beginning."),
     0, 1e7, 0.1, 3, kWrittenWhereSet, &NamedRecording::from_s},
    {"to_s", translatable("To"), "s",
     translatable("Where the part that is used ends, in seconds of the recording; empty for its "
                  "end."),
     0, 1e7, 0.1, 3, kWrittenWhereSet, &NamedRecording::to_s},
    {"arm", translatable("Tapped arm"), "",
     translatable("Which arm was tapped, counted from 1; empty for the first."), 1, 16, 1, 0,
     kWrittenWhereSet, &NamedRecording::arm},
    {"throttle", translatable("Throttle of the film"), "",
     translatable("Where the stick stood while it was filmed, 0 to 1; empty where that is not "
                  "known."),
     0.01, 1, 0.01, 3, kWrittenWhereSet, &NamedRecording::throttle},
    {"sensor_mm", translatable("Place of the sensor"), "mm",
     translatable("Where the sensor sat, measured from the middle of the centre plate: forward, "
                  "left, up; empty where that is not known."),
     -2000, 2000, 1, 1, kWrittenWhereSet, &NamedRecording::sensor_mm},
    {"sensor_mass_g", translatable("Mass of the sensor"), "g",
     translatable("What the sensor weighs with what holds it, where it is no part of the craft."),
     0, 2000, 1, 1, kWrittenWhereSet, &NamedRecording::sensor_mass_g},
};

constexpr const char* kEndsWords[] = {"clamped", "hinged"};
constexpr const char* kLensWords[] = {"rectilinear", "fisheye"};
constexpr const char* kSeenWords[] = {"clean", "faint", "bad"};
constexpr const char* kOriginWords[] = {"typical", "label", "measured", "estimated"};
constexpr const char* kKindWords[] = {"pluck", "tap", "sweep", "sound", "film"};
constexpr const char* kRoleWords[] = {"unused", "time",     "acceleration", "angular_rate",
                                      "sound",  "throttle", "rotor_speed",  "other"};
constexpr Choice kEnds{translatable("Ends"), kEndsWords};
constexpr Choice kLens{translatable("Lens"), kLensWords};
constexpr Choice kSeen{translatable("What was seen"), kSeenWords};
constexpr Choice kOrigin{translatable("Origin"), kOriginWords};
constexpr Choice kKind{translatable("Kind of recording"), kKindWords};
constexpr Choice kRole{translatable("Role of a column"), kRoleWords};

}  // namespace

// clang-format off
template <> std::span<const Field<Part>> fieldsOf<Part>() { return kPartFields; }
template <> std::span<const Field<ArmSection>> fieldsOf<ArmSection>() { return kArmSectionFields; }
template <> std::span<const Field<Arm>> fieldsOf<Arm>() { return kArmFields; }
template <> std::span<const Field<Motor>> fieldsOf<Motor>() { return kMotorFields; }
template <> std::span<const Field<Propeller>> fieldsOf<Propeller>() { return kPropellerFields; }
template <> std::span<const Field<Battery>> fieldsOf<Battery>() { return kBatteryFields; }
template <> std::span<const Field<Drive>> fieldsOf<Drive>() { return kDriveFields; }
template <> std::span<const Field<Bay>> fieldsOf<Bay>() { return kBayFields; }
template <> std::span<const Field<Camera>> fieldsOf<Camera>() { return kCameraFields; }
template <> std::span<const Field<TubeKind>> fieldsOf<TubeKind>() { return kTubeFields; }
template <> std::span<const Field<MountPoint>> fieldsOf<MountPoint>() { return kMountPointFields; }
template <> std::span<const Field<Mounts>> fieldsOf<Mounts>() { return kMountsFields; }
template <> std::span<const Field<Flight>> fieldsOf<Flight>() { return kFlightFields; }
template <> std::span<const Field<FlightNote>> fieldsOf<FlightNote>() { return kFlightNoteFields; }
template <> std::span<const Field<Limits>> fieldsOf<Limits>() { return kLimitsFields; }
template <> std::span<const Field<Source>> fieldsOf<Source>() { return kSourceFields; }
template <> std::span<const Field<NamedRecording>> fieldsOf<NamedRecording>() { return kRecordingFields; }
template <> std::span<const Field<Design>> fieldsOf<Design>() { return kDesignFields; }
template <> const Choice& choiceOf<Ends>() { return kEnds; }
template <> const Choice& choiceOf<Lens>() { return kLens; }
template <> const Choice& choiceOf<Seen>() { return kSeen; }
template <> const Choice& choiceOf<Origin>() { return kOrigin; }
template <> const Choice& choiceOf<RecordingKind>() { return kKind; }
template <> const Choice& choiceOf<ColumnRole>() { return kRole; }
// clang-format on

}  // namespace stillbay
