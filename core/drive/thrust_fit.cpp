// SPDX-License-Identifier: MIT
#include "core/drive/thrust_fit.h"

#include "core/base/units.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

namespace stillbay {
namespace {

constexpr double kStanding = 1e-3;   // [rev/s]; slower than that nothing turns
constexpr double kNoVoltage = 1e-3;  // [V]

/// A reading with its speed and shaft power.
struct Row {
    std::size_t line = 1;
    double speed = 0.0;
    std::optional<double> thrust, power;
};

std::optional<double> electricPower(const ThrustReading& reading)
{
    if (reading.electricPower)
        return reading.electricPower;
    if (reading.voltage && reading.current)
        return *reading.voltage * *reading.current;
    return std::nullopt;
}

// What the pack or supply gives.
std::optional<double> current(const ThrustReading& reading)
{
    if (reading.current)
        return reading.current;
    if (reading.electricPower && reading.voltage && *reading.voltage > 0)
        return *reading.electricPower / *reading.voltage;
    return std::nullopt;
}

// Back EMF uV − R I/u, which the speed is KV times.
std::optional<double> backEmf(const ThrustReading& reading, const DriveModel& drive)
{
    const std::optional<double> amperes = current(reading);
    if (!reading.throttle || *reading.throttle <= 0 || !reading.voltage || !amperes)
        return std::nullopt;
    const double duty = dutyAt(drive, *reading.throttle);
    if (duty <= 0)
        return std::nullopt;
    const double emf = duty * *reading.voltage - drive.motorResistance * *amperes / duty;
    return emf > kNoVoltage ? std::optional(emf) : std::nullopt;
}

std::optional<double> speedOf(const ThrustReading& reading, SpeedSource source,
                              const DriveModel& drive)
{
    std::optional<double> speed;
    switch (source) {
        case SpeedSource::Measured:
            speed = reading.speed;
            break;
        case SpeedSource::MotorCurrent:
            if (const std::optional<double> emf = backEmf(reading, drive))
                speed = drive.kv * *emf;
            break;
        case SpeedSource::Motor:
            if (reading.throttle && reading.voltage) {
                DriveModel onStand = drive;
                onStand.packResistance = 0;  // the voltage is the one under load
                speed = rotorSpeed(onStand, *reading.throttle, *reading.voltage);
            }
            break;
    }
    return speed && *speed > kStanding ? speed : std::nullopt;
}

std::optional<double> shaftPower(const ThrustReading& reading, PowerSource source, double speed,
                                 const DriveModel& drive)
{
    constexpr double kTurn = 2 * std::numbers::pi;
    switch (source) {
        case PowerSource::None:
            break;
        case PowerSource::Shaft:
            return reading.shaftPower;
        case PowerSource::Torque:
            return reading.torque ? std::optional(kTurn * speed * *reading.torque) : std::nullopt;
        case PowerSource::Electric: {
            const std::optional<double> watts = electricPower(reading);
            if (!watts || *watts <= 0)
                break;
            const double emf = speed / drive.kv;
            const double amperes =
                2 * *watts / (emf + std::sqrt(emf * emf + 4 * drive.motorResistance * *watts));
            const double shaft = emf * (amperes - drive.noLoadCurrent);
            return shaft > 0 ? std::optional(shaft) : std::nullopt;
        }
    }
    return std::nullopt;
}

template <class Holds>
bool isInThree(std::span<const ThrustReading> readings, const Holds& holds)
{
    return std::count_if(readings.begin(), readings.end(), holds) >=
           static_cast<std::ptrdiff_t>(kFewestForFit);
}

std::optional<SpeedSource> speedSource(std::span<const ThrustReading> readings,
                                       const DriveModel& drive)
{
    for (const SpeedSource source :
         {SpeedSource::Measured, SpeedSource::MotorCurrent, SpeedSource::Motor})
        if (isInThree(readings, [&](const ThrustReading& reading) {
                return speedOf(reading, source, drive).has_value();
            }))
            return source;
    return std::nullopt;
}

PowerSource powerSource(std::span<const ThrustReading> readings)
{
    if (isInThree(readings, [](const ThrustReading& r) { return r.shaftPower.has_value(); }))
        return PowerSource::Shaft;
    if (isInThree(readings, [](const ThrustReading& r) { return r.torque.has_value(); }))
        return PowerSource::Torque;
    if (isInThree(readings, [](const ThrustReading& r) { return electricPower(r).has_value(); }))
        return PowerSource::Electric;
    return PowerSource::None;
}

/// Points of one fit, and what y is per unit of the coefficient.
struct Points {
    std::vector<std::size_t> line;
    std::vector<double> speed, x, y;
};

Points thrustPoints(const std::vector<Row>& rows, const DriveModel& drive)
{
    Points points;
    for (const Row& row : rows)
        if (row.thrust) {
            points.line.push_back(row.line);
            points.speed.push_back(row.speed);
            points.x.push_back(drive.airDensity * std::pow(row.speed, 2) *
                               std::pow(drive.diameter, 4));
            points.y.push_back(*row.thrust);
        }
    return points;
}

Points powerPoints(const std::vector<Row>& rows, const DriveModel& drive)
{
    Points points;
    for (const Row& row : rows)
        if (row.power) {
            points.line.push_back(row.line);
            points.speed.push_back(row.speed);
            points.x.push_back(drive.airDensity * std::pow(row.speed, 3) *
                               std::pow(drive.diameter, 5));
            points.y.push_back(*row.power);
        }
    return points;
}

Points kvPoints(std::span<const ThrustReading> readings, const DriveModel& drive)
{
    Points points;
    for (const ThrustReading& reading : readings) {
        const std::optional<double> emf = backEmf(reading, drive);
        if (!emf || !reading.speed || *reading.speed <= kStanding)
            continue;
        points.line.push_back(reading.line);
        points.speed.push_back(*reading.speed);
        points.x.push_back(*emf);
        points.y.push_back(*reading.speed);
    }
    return points;
}

/// The points of the three fits with one drive.
struct Worked {
    Points thrust, power, kv;
};

Worked workOut(std::span<const ThrustReading> readings, SpeedSource speeds, PowerSource powers,
               const DriveModel& drive)
{
    std::vector<Row> rows;
    for (const ThrustReading& reading : readings)
        if (const std::optional<double> speed = speedOf(reading, speeds, drive))
            rows.push_back(
                {reading.line, *speed, reading.thrust, shaftPower(reading, powers, *speed, drive)});
    return {thrustPoints(rows, drive), powerPoints(rows, drive),
            speeds == SpeedSource::Measured ? kvPoints(readings, drive) : Points{}};
}

ProportionalFit fitWithout(const Points& points, const std::vector<bool>& isLeftOut)
{
    std::vector<double> x, y;
    for (std::size_t i = 0; i < points.x.size(); ++i)
        if (!isLeftOut[i]) {
            x.push_back(points.x[i]);
            y.push_back(points.y[i]);
        }
    return fitProportional(x, y);
}

// Of another drive the same rows: without those that were left out before.
double slopeOf(const Points& points, const Fitted& base)
{
    std::vector<bool> isLeftOut;
    for (const std::size_t line : points.line)
        isLeftOut.push_back(std::any_of(
            base.points.begin(), base.points.end(),
            [line](const FittedPoint& point) { return point.line == line && point.isLeftOut; }));
    const auto kept = std::count(isLeftOut.begin(), isLeftOut.end(), false);
    return kept < static_cast<std::ptrdiff_t>(kFewestForFit) ? base.fit.slope
                                                             : fitWithout(points, isLeftOut).slope;
}

std::optional<Fitted> fitted(const Points& points)
{
    if (points.x.size() < kFewestForFit)
        return std::nullopt;
    const std::vector<bool> isLeftOut = farOff(points.x, points.y);
    Fitted fitted{.fit = fitWithout(points, isLeftOut)};
    for (std::size_t i = 0; i < points.x.size(); ++i)
        fitted.points.push_back({points.line[i], points.speed[i], points.y[i], isLeftOut[i]});
    std::stable_sort(fitted.points.begin(), fitted.points.end(),
                     [](const FittedPoint& a, const FittedPoint& b) { return a.speed < b.speed; });
    return fitted;
}

// What the drive's figures may be off, carried through to each coefficient one by one.
void addDriveSpread(ThrustFit& fit, std::span<const ThrustReading> readings,
                    const ThrustStand& stand)
{
    const std::pair<double DriveModel::*, double> figures[] = {
        {&DriveModel::kv, stand.spread.kv},
        {&DriveModel::motorResistance, stand.spread.motorResistance},
        {&DriveModel::noLoadCurrent, stand.spread.noLoadCurrent},
        {&DriveModel::powerCoefficient, stand.spread.powerCoefficient}};
    for (const auto& [figure, spread] : figures) {
        DriveModel drive = stand.drive;
        drive.*figure *= 1 + spread;
        const Worked worked = workOut(readings, fit.speeds, fit.powers, drive);
        const auto add = [](std::optional<Fitted>& base, const Points& points) {
            if (base)
                base->ofDrive =
                    std::hypot(base->ofDrive, slopeOf(points, *base) / base->fit.slope - 1);
        };
        add(fit.thrust, worked.thrust);
        add(fit.power, worked.power);
        add(fit.kv, worked.kv);
    }
}

Phrase runText(const Fitted& fitted, const char* pattern)
{
    const auto kept = [](const FittedPoint& point) {
        return !point.isLeftOut;
    };
    const auto first = std::find_if(fitted.points.begin(), fitted.points.end(), kept);
    const auto last = std::find_if(fitted.points.rbegin(), fitted.points.rend(), kept);
    return phrase(pattern, rounded(fitted.fit.trend->slopeAtLeast, 3),
                  fixed(first->speed / unit::rpm, 0), rounded(fitted.fit.trend->slopeAtMost, 3),
                  fixed(last->speed / unit::rpm, 0));
}

std::string linesLeftOut(const Fitted& fitted)
{
    std::vector<std::size_t> lines;
    for (const FittedPoint& point : fitted.points)
        if (point.isLeftOut)
            lines.push_back(point.line);
    std::sort(lines.begin(), lines.end());
    std::string text;
    for (const std::size_t line : lines)
        text += (text.empty() ? "" : ", ") + std::to_string(line);
    return text;
}

void addLeftOut(std::vector<Phrase>& notes, const std::optional<Fitted>& fitted,
                const char* pattern)
{
    if (!fitted)
        return;
    if (std::string lines = linesLeftOut(*fitted); !lines.empty())
        notes.push_back(phrase(pattern, std::move(lines)));
}

}  // namespace

double Fitted::spread() const
{
    return std::hypot(fit.standardError, ofDrive, fit.trend ? fit.trend->rms : 0.0);
}

Result<ThrustFit> fitThrust(std::span<const ThrustReading> readings, const ThrustStand& stand)
{
    const std::optional<SpeedSource> speeds = speedSource(readings, stand.drive);
    if (!speeds)
        return fail(Errc::BadInput,
                    phrase("fewer than three rows tell how fast the propeller turns: that takes a "
                           "column of speed, or of throttle and of voltage"));
    ThrustFit fit{.speeds = *speeds, .powers = powerSource(readings)};
    if (fit.speeds == SpeedSource::Motor && fit.powers == PowerSource::Electric)
        fit.powers = PowerSource::None;  // those speeds come from the power coefficient
    const Worked worked = workOut(readings, fit.speeds, fit.powers, stand.drive);
    fit.thrust = fitted(worked.thrust);
    fit.power = fitted(worked.power);
    fit.kv = fitted(worked.kv);
    if (!fit.thrust && !fit.power)
        return fail(Errc::BadInput,
                    phrase("fewer than three rows that tell a speed have a thrust or a power"));
    if (fit.thrust && !(fit.thrust->fit.slope > 0))
        return fail(Errc::BadInput, phrase("the thrust does not grow with the speed"));
    if (fit.power && !(fit.power->fit.slope > 0))
        return fail(Errc::BadInput, phrase("the power does not grow with the speed"));
    addDriveSpread(fit, readings, stand);
    return fit;
}

std::vector<Phrase> thrustNotes(const ThrustFit& fit)
{
    std::vector<Phrase> notes;
    if (fit.speeds == SpeedSource::MotorCurrent)
        notes.push_back(
            phrase("The table has no speeds: they are worked out from throttle, "
                   "voltage and current with the craft's KV, whose spread counts."));
    if (fit.speeds == SpeedSource::Motor)
        notes.push_back(
            phrase("The table has no speeds: they are worked out from throttle and "
                   "voltage with the craft's KV and power coefficient, whose spread "
                   "counts."));
    if (fit.power && fit.powers == PowerSource::Electric)
        notes.push_back(
            phrase("The power is electric: what the motor loses is taken off with the "
                   "craft's resistance and no-load current."));
    if (fit.thrust && fit.thrust->fit.trend)
        notes.push_back(
            runText(*fit.thrust, translatable("The thrust coefficient goes from %1 at %2 rpm to %3 "
                                              "at %4 rpm; the craft has one for all speeds, so its "
                                              "spread is larger.")));
    if (fit.power && fit.power->fit.trend)
        notes.push_back(
            runText(*fit.power, translatable("The power coefficient goes from %1 at %2 rpm to %3 "
                                             "at %4 rpm; the craft has one for all speeds, so its "
                                             "spread is larger.")));
    if (fit.kv && fit.kv->fit.trend)
        notes.push_back(
            phrase("KV runs with the speed: the throttle noted is not the share of the "
                   "voltage that the motor gets. Trust the row at full throttle most."));
    addLeftOut(notes, fit.thrust,
               translatable("Left out, because the thrust lies far off the fit: line %1."));
    addLeftOut(notes, fit.power,
               translatable("Left out, because the power lies far off the fit: line %1."));
    addLeftOut(notes, fit.kv,
               translatable("Left out of KV, because it lies far off the rest: line %1."));
    return notes;
}

}  // namespace stillbay
