// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/linalg.h"
#include "core/base/phrase.h"
#include "core/base/result.h"
#include "core/base/shared_list.h"
#include "core/craft/craft.h"
#include "core/mass/mass.h"
#include "core/response/figures.h"
#include "core/suspension/elastic_centre.h"

#include <array>
#include <optional>
#include <vector>

/// All that is known of one craft, as a plain value: what the window draws and `report` prints.
/// SI inside ([m], [kg], [N], [rad]); Hz, rpm and px carry their unit in the name.
namespace stillbay {

/// One tube at the drawn stretch (drilled: at the mean drawn length), static.
struct TubeFigures {
    double youngs_modulus = 0.0;             ///< [Pa]
    double shear_modulus = 0.0;              ///< [Pa]
    double length = 0.0;                     ///< [m] between the clamps as drawn
    double stretch = 0.0;                    ///< drawn length / free length
    double tension = 0.0;                    ///< [N], negative in compression
    double axial_stiffness = 0.0;            ///< [N/m]
    double lateral_stiffness = 0.0;          ///< [N/m], ends held square
    std::optional<double> own_resonance_hz;  ///< at the dynamic modulus; none once buckled
    bool modulus_from_hardness = false;
};

struct ModeFigures {
    double frequency_hz = 0.0;
    double loss_factor = 0.0;
    Vector6d motion = Vector6d::Zero();  ///< real part, rotations × 0.1 m, largest entry ±1
    Vector6d energy = Vector6d::Zero();  ///< share of each motion in its kinetic energy, sum 1
    Phrase text;                         ///< "pitch and surge: bay nods and slides fore and aft"
};

/// What of the airframe's motion reaches the camera; sizes agree.
struct TransmissibilityCurves {
    std::vector<double> frequency_hz;
    std::vector<double> x, y, z;           ///< camera point along an axis, airframe along it
    std::vector<double> roll, pitch, yaw;  ///< bay about an axis, airframe about it
};

struct HoverFigures {
    double speed_rpm = 0.0;
    double thrust_per_motor = 0.0;        ///< [N]
    std::optional<double> throttle_full;  ///< none: the pack cannot hold the craft
    std::optional<double> throttle_empty;
    double balance_grade_mm_s = 0.0;  ///< ISO 21940-11 grade of bell and propeller
};

/// What every verdict is made of: may it fly, is the prediction about this craft's flight, and what
/// does the film show.
struct Status {
    bool flyable = true;            ///< no constraint that forbids flight is violated
    std::vector<Warning> violated;  ///< constraints: code, and a few words instead of a sentence
    std::optional<Grade> grade;     ///< of the worst wobble in cruise from full to empty pack
};

struct Assessment {
    MassFigures bay, airframe;  ///< airframe: arms, motors and propellers in
    TubeFigures tube;
    RestFigures rest;                          ///< at 1 g
    std::optional<RestFigures> rest_3g;        ///< none: no stable rest at 3 g (then a warning)
    std::array<ModeFigures, 6> bench, flight;  ///< rising in frequency
    double bench_decoupling = 0.0;             ///< 1: each bench mode is one motion
    ElasticCentre elastic_centre;              ///< from the bay's centre of mass at rest
    double arm_vertical_hz = 0.0, arm_horizontal_hz = 0.0;  ///< of the longest arm
    TransmissibilityCurves transmissibility;
    MotorFigures motor;
    PropellerFigures propeller;
    HoverFigures hover;
    SharedList<ThrottlePoint> throttle;   ///< rising in throttle; at the full pack
    std::vector<WobbleAt> curve;          ///< their wobble, and the peaks between them
    std::vector<ThrottleRange> ranges;    ///< of the curve; cover the throttles without gaps
    std::optional<CruiseFigures> cruise;  ///< none: no throttle lies in the cruise window
    std::vector<Warning> warnings;
    Status status;
};

}  // namespace stillbay
