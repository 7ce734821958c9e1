// SPDX-License-Identifier: MIT
#include "core/calibrate/speed_at_throttle.h"

#include "core/base/units.h"
#include "core/calibrate/speed_fit.h"
#include "core/calibrate/speed_readings.h"
#include "core/craft/craft.h"
#include "core/setup/fields.h"
#include "core/setup/spreads.h"

#include <cmath>
#include <cstddef>
#include <utility>

namespace stillbay {
namespace {

constexpr double kFullThrottle = 0.98;  // from here on duty and throttle agree
constexpr double kAnyKv = 0.5;          // doubt of a KV of which nothing is known
constexpr double kSpeedTold = 0.5;      // of the doubt there was
constexpr const char* kKv = "drive.motor.kv_rpm_per_v";
constexpr const char* kResistance = "drive.motor.resistance_mohm";
constexpr const char* kPower = "drive.propeller.power_coefficient";
constexpr const char* kPack = "drive.battery.resistance_mohm";

// Doubts of numbers that say nothing of where they come from, one standard deviation of the
// logarithm: factors 1.07, 1.5, 1.25 and 2 either way hold nine of ten. Common practice, no source.
constexpr double kKvDoubt = 0.041, kResistanceDoubt = 0.25, kPowerDoubt = 0.136, kPackDoubt = 0.42;

double speedDoubtOf(const Setup& setup, const char* key, double usual)
{
    return spreadOfNumber(setup, key, true, {usual, {}});
}

// What the class below says.
constexpr const char* kKvLabel = translatable("KV of the motors");
constexpr const char* kResistanceLabel = translatable("resistance of the motors");
constexpr const char* kPackLabel = translatable("resistance of the pack");
constexpr const char* kTellsNothing =
    translatable("the speeds tell nothing that is not known better");
constexpr const char* kScatters =
    translatable("the readings scatter more than their spread explains");
constexpr const char* kKvIsFar = translatable(
    "KV is further from the craft's than a label is usually off: is it the motor, and the voltage, "
    "that the craft says?");
constexpr const char* kNoVoltage = translatable("no voltage was noted");
constexpr const char* kExplainsAll =
    translatable("the corrected motor explains every reading within its spread");
constexpr const char* kNoKv =
    translatable("No KV gives the speed that was measured at full throttle");
constexpr const char* kTooFast = translatable(
    "At %1 % throttle the rotors turn faster than the motors can at any duty: KV or the voltage is "
    "wrong; measure at full throttle too");
constexpr const char* kNotRising =
    translatable("The speeds do not rise with the throttle from %1 % to %2 %");
constexpr const char* kTooManyForCurve =
    translatable("There are %1 throttles, a throttle curve takes %2");
constexpr const char* kDutyIsNotThrottle =
    translatable("no KV and resistance explain the speeds: the duty is not the throttle");

/// The craft and the readings in one.
class SpeedTest {
public:
    SpeedTest(const Setup& setup, MeasuredDrive measured, const SpeedDoubts& doubts,
              const SpeedOptions& options)
        : m_setup(setup), m_measured(std::move(measured)), m_doubts(doubts), m_options(options)
    {
        m_hasVoltage = m_measured.readings[0].voltage.has_value();
    }

    Result<Correction> answer();

private:
    Result<Correction> motorFigures(const SpeedFit& both, bool isKvFar);
    Result<Correction> throttleCurve();
    void addKv(Correction& correction, double change, double spread) const;
    double voltageDoubt() const;

    const Setup& m_setup;
    MeasuredDrive m_measured;
    SpeedDoubts m_doubts;
    SpeedOptions m_options;
    bool m_hasVoltage = false;
};

Phrase measurementText(std::size_t throttles)
{
    return phrase("speeds at %1 throttles", whole(throttles));
}

Warning packTakenFull()
{
    return {"pack-taken-full",
            phrase("Without a voltage the pack is taken to have been full; measure just after "
                   "charging, or note the voltage of each reading.")};
}

Warning notToldResistance()
{
    return {"resistance-not-told",
            phrase("These speeds do not tell the motors' resistance: it stays as it is. Readings "
                   "from a fifth to full throttle would.")};
}

Warning speedsEnd(double throttle)
{
    return {"speeds-end", phrase("The readings end at %1 % throttle: above it these speeds are "
                                 "computed and not measured.",
                                 fixed(kPercent * throttle, 0))};
}

Warning notToldKv()
{
    return {"kv-not-told", phrase("These speeds do not tell KV better than the label does: it "
                                  "stays as it is.")};
}

Warning withPropeller()
{
    return {"resistance-with-propeller",
            phrase("Speeds tell the product of resistance and power coefficient: the resistance "
                   "holds with the power coefficient the craft has now.")};
}

Warning curveStandsOnKv()
{
    return {"curve-on-kv",
            phrase("No reading is at full throttle, where duty and throttle agree: the curve is "
                   "as uncertain as KV. One more reading there would settle it.")};
}

Warning startsAgain()
{
    return {"curve-replaced", phrase("The curve replaces the one the craft has.")};
}

// What the full pack may be off acts on KV as it is; all voltages are off together.
double SpeedTest::voltageDoubt() const
{
    return m_hasVoltage ? m_options.voltageSpread : m_options.fullPackSpread;
}

void SpeedTest::addKv(Correction& correction, double change, double spread) const
{
    const double before = m_setup.drive.motor.kv_rpm_per_v;
    correction.values.push_back({kKv, phrase(kKvLabel), "rpm/V", before, before * std::exp(change),
                                 std::hypot(spread, voltageDoubt())});
}

Result<Correction> SpeedTest::motorFigures(const SpeedFit& both, bool isKvFar)
{
    Correction correction;
    correction.measurement = measurementText(m_measured.readings.size());
    correction.residualBefore = speedResidual(m_measured);
    const bool isResistanceTold =
        std::sqrt(both.resistanceVariance) < kSpeedTold * m_doubts.resistance;
    SpeedDoubts doubts = m_doubts;
    if (isKvFar)
        doubts.kv = kAnyKv;
    const SpeedFit fit = isResistanceTold ? both : fitSpeeds(m_measured, doubts, false, m_options);
    const double kvSpread = std::sqrt(fit.kvVariance);
    if (kvSpread < kSpeedTold * m_doubts.kv || isResistanceTold || isKvFar)
        addKv(correction, fit.kv, kvSpread);
    else
        correction.warnings.push_back(notToldKv());
    if (isResistanceTold) {
        const double before = m_setup.drive.motor.resistance_mohm;
        correction.values.push_back(
            {kResistance, phrase(kResistanceLabel), "mΩ", before, before * std::exp(fit.resistance),
             std::hypot(std::sqrt(both.resistanceVariance), m_doubts.power)});
        correction.warnings.push_back(withPropeller());
    } else {
        correction.warnings.push_back(notToldResistance());
    }
    if (const auto pack = fitPack(m_measured, fit, m_doubts, m_options);
        pack && pack->spread < kSpeedTold * m_doubts.pack)
        correction.values.push_back({kPack, phrase(kPackLabel), "mΩ",
                                     m_setup.drive.battery.resistance_mohm,
                                     pack->resistance / unit::mohm, pack->spread});
    correction.residual = fit.residual;
    const double last = m_measured.readings.back().throttle;
    if (isKvFar && last < m_setup.flight.cruise_throttle[1])
        correction.warnings.push_back(speedsEnd(last));
    if (!m_hasVoltage)
        correction.warnings.push_back(packTakenFull());
    if (correction.values.empty())
        correction.mark = {Quality::Poor, phrase(kTellsNothing)};
    else if (!explainsSpeeds(fit, m_measured))
        correction.mark = {Quality::Fair, phrase(kScatters)};
    else if (isKvFar)
        correction.mark = {Quality::Fair, phrase(kKvIsFar)};
    else if (!m_hasVoltage)
        correction.mark = {Quality::Fair, phrase(kNoVoltage)};
    else
        correction.mark = {Quality::Good, phrase(kExplainsAll)};
    return correction;
}

Result<Correction> SpeedTest::throttleCurve()
{
    const bool hadCurve = !m_measured.drive.throttleCurve.empty();
    Correction correction;
    correction.measurement = measurementText(m_measured.readings.size());
    correction.residualBefore = speedResidual(m_measured);
    DriveModel& drive = m_measured.drive;
    drive.throttleCurve.clear();
    const SteadySpeed& top = m_measured.readings.back();
    if (top.throttle >= kFullThrottle) {
        MeasuredDrive atTop = m_measured;
        atTop.readings = {top};
        SpeedDoubts open = m_doubts;
        open.kv = 10;  // nothing but this reading
        const SpeedFit fit = fitSpeeds(atTop, open, false, m_options);
        if (!fit.isSound)
            return fail(Errc::NoAnswer, phrase(kNoKv));
        drive.kv *= std::exp(fit.kv);
        addKv(correction, fit.kv, std::sqrt(fit.kvVariance));
    } else {
        correction.warnings.push_back(curveStandsOnKv());
    }
    ThrottleCurve curve;
    for (const SteadySpeed& reading : m_measured.readings) {
        const auto duty = throttleForSpeed(drive, reading.speed, m_measured.voltage(reading));
        const bool isTop = reading.throttle >= kFullThrottle;
        if (!duty && !isTop)
            return fail(Errc::NoAnswer, phrase(kTooFast, rounded(100 * reading.throttle, 3)), kKv);
        curve.push_back({reading.throttle, isTop ? reading.throttle : *duty});
        if (curve.size() > 1 && !(curve.back()[1] > curve[curve.size() - 2][1]))
            return fail(Errc::NoAnswer,
                        phrase(kNotRising, rounded(100 * curve[curve.size() - 2][0], 3),
                               rounded(100 * curve.back()[0], 3)));
    }
    if (curve.size() > kThrottleCurveCount.max)
        return fail(Errc::BadInput,
                    phrase(kTooManyForCurve, whole(curve.size()), whole(kThrottleCurveCount.max)));
    drive.throttleCurve = curve;
    correction.residual = speedResidual(m_measured);
    correction.throttleCurve = std::move(curve);
    double squares = voltageDoubt() * voltageDoubt();
    for (const SteadySpeed& reading : m_measured.readings)
        squares += std::pow(readingDoubt(reading, m_options), 2) /
                   static_cast<double>(m_measured.readings.size());
    correction.throttleCurveSpread = std::sqrt(squares);
    if (hadCurve)
        correction.warnings.push_back(startsAgain());
    if (!m_hasVoltage)
        correction.warnings.push_back(packTakenFull());
    correction.mark = {Quality::Fair, phrase(kDutyIsNotThrottle)};
    return correction;
}

Result<Correction> SpeedTest::answer()
{
    const SpeedFit both = fitSpeeds(m_measured, m_doubts, true, m_options);
    if (explainsSpeeds(both, m_measured))
        return motorFigures(both, false);
    // A KV far from the craft's, of another winding say, is no curve.
    SpeedDoubts any = m_doubts;
    any.kv = kAnyKv;
    const SpeedFit far = fitSpeeds(m_measured, any, true, m_options);
    return explainsSpeeds(far, m_measured) ? motorFigures(far, true) : throttleCurve();
}

}  // namespace

Result<Correction> speedAtThrottle(const Setup& setup, std::span<const SteadySpeed> readings,
                                   const SpeedOptions& options)
{
    auto merged = mergedSpeeds(readings);
    if (!merged)
        return tl::unexpected(merged.error());
    const ExcitedAirframe craft = makeExcitedAirframe(setup);
    MeasuredDrive measured{craft.drive, craft.fullVoltage, *std::move(merged)};
    if (measured.readings[0].voltage)
        measured.drive.packResistance = 0;
    const double power =
        craft.propeller.power_estimated ? kPowerDoubt : speedDoubtOf(setup, kPower, 0.08);
    return SpeedTest(setup, std::move(measured),
                     {speedDoubtOf(setup, kKv, kKvDoubt),
                      speedDoubtOf(setup, kResistance, kResistanceDoubt), power,
                      speedDoubtOf(setup, kPack, kPackDoubt)},
                     options)
        .answer();
}

}  // namespace stillbay
