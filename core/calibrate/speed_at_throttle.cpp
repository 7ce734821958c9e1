// SPDX-License-Identifier: MIT
#include "core/calibrate/speed_at_throttle.h"

#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/setup/fields.h"
#include "core/setup/spreads.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

namespace stillbay {
namespace {

constexpr double kSameThrottle = 0.01;  // nearer ones are one reading
constexpr double kFullThrottle = 0.98;  // from here on duty and throttle agree
constexpr std::size_t kFewestThrottles = 3;
constexpr double kAnyKv = 0.5;             // doubt of a KV of which nothing is known
constexpr double kSpeedTold = 0.5;         // of the doubt there was
constexpr double kVoltmeterRepeats = 0.1;  // of a voltmeter's spread; the rest it has in common
constexpr int kSpeedIterations = 20;
constexpr double kSpeedStep = 1e-5;  // of a logarithm, for slopes
constexpr const char* kKv = "drive.motor.kv_rpm_per_v";
constexpr const char* kResistance = "drive.motor.resistance_mohm";
constexpr const char* kPower = "drive.propeller.power_coefficient";
constexpr const char* kPack = "drive.battery.resistance_mohm";

// Doubts of numbers that say nothing of where they come from, one standard deviation of the
// logarithm: factors 1.07, 1.5, 1.25 and 2 either way hold nine of ten. Common practice, no source.
constexpr double kKvDoubt = 0.041, kResistanceDoubt = 0.25, kPowerDoubt = 0.136, kPackDoubt = 0.42;

struct SpeedDoubts {
    double kv, resistance, power, pack;
};

double speedDoubtOf(const Setup& setup, const char* key, double usual)
{
    return spreadOfNumber(setup, key, true, {usual, {}});
}

// Readings at one throttle are one, their mean; rising.
std::vector<SteadySpeed> mergedReadings(std::span<const SteadySpeed> readings)
{
    std::vector<SteadySpeed> sorted(readings.begin(), readings.end());
    std::sort(sorted.begin(), sorted.end(),
              [](const SteadySpeed& a, const SteadySpeed& b) { return a.throttle < b.throttle; });
    std::vector<SteadySpeed> result;
    for (std::size_t first = 0, last = 0; first < sorted.size(); first = last) {
        SteadySpeed mean{0, 0, {}};
        double voltage = 0;
        while (last < sorted.size() &&
               sorted[last].throttle < sorted[first].throttle + kSameThrottle) {
            mean.throttle += sorted[last].throttle;
            mean.speed += sorted[last].speed;
            voltage += sorted[last].voltage.value_or(0);
            ++last;
        }
        const auto count = static_cast<double>(last - first);
        mean.throttle /= count;
        mean.speed /= count;
        if (sorted[first].voltage)
            mean.voltage = voltage / count;
        result.push_back(mean);
    }
    return result;
}

Result<void> checkReadings(std::span<const SteadySpeed> readings)
{
    const bool hasVoltage = !readings.empty() && readings[0].voltage.has_value();
    for (const SteadySpeed& reading : readings) {
        if (!(reading.throttle > 0 && reading.throttle <= 1))
            return fail(Errc::BadInput, phrase("A throttle is %1, must be above 0 and up to 1",
                                               exact(reading.throttle)));
        if (!(reading.speed > 0 && std::isfinite(reading.speed)))
            return fail(Errc::BadInput, phrase("A speed is %1 rpm, must be above 0",
                                               rounded(reading.speed / unit::rpm, 5)));
        if (reading.voltage.has_value() != hasVoltage)
            return fail(Errc::BadInput,
                        phrase("Some readings have a voltage and others none; all must have the "
                               "same"));
        if (reading.voltage && !(*reading.voltage > 0 && std::isfinite(*reading.voltage)))
            return fail(Errc::BadInput,
                        phrase("A voltage is %1 V, must be above 0", rounded(*reading.voltage, 4)));
    }
    return {};
}

/// The drive as the speeds see it: without a pack's resistance where the voltage is the one under
/// load.
struct Stand {
    DriveModel drive;
    double fullVoltage = 0.0;
    std::vector<SteadySpeed> readings;

    double voltage(const SteadySpeed& reading) const
    {
        return reading.voltage.value_or(fullVoltage);
    }

    double speed(const SteadySpeed& reading, double lnKv, double lnResistance) const
    {
        DriveModel changed = drive;
        changed.kv *= std::exp(lnKv);
        changed.motorResistance *= std::exp(lnResistance);
        return rotorSpeed(changed, reading.throttle, voltage(reading));
    }
};

/// A fit of one or two logarithms: of KV, and of the motor's resistance.
struct SpeedFit {
    double kv = 0.0, resistance = 0.0;                  // change of the logarithm
    double kvVariance = 0.0, resistanceVariance = 0.0;  // readings alone with what was before
    double misfit = 0.0;    // sum of squares, the doubts of before among them
    double residual = 0.0;  // rms of the speeds over them
    bool isSound = true;
};

// Doubt of each reading's logarithm: of the speed, and of the throttle by how speed goes with it.
double readingDoubt(const SteadySpeed& reading, const SpeedOptions& options)
{
    const double slope = 1 / reading.throttle;  // of ln speed, about
    const double volts = reading.voltage ? kVoltmeterRepeats * options.voltageSpread : 0.0;
    return std::hypot(options.speedSpread, options.throttleSpread * slope, volts);
}

SpeedFit fitSpeeds(const Stand& stand, const SpeedDoubts& doubts, bool isResistanceFree,
                   const SpeedOptions& options)
{
    SpeedFit fit;
    double a = 0, b = 0, c = 0;  // normal matrix [a b; b c]
    for (int k = 0; k < kSpeedIterations; ++k) {
        double g0 = -fit.kv / (doubts.kv * doubts.kv);
        double g1 = -fit.resistance / (doubts.resistance * doubts.resistance);
        a = 1 / (doubts.kv * doubts.kv);
        c = 1 / (doubts.resistance * doubts.resistance);
        b = 0;
        fit.misfit = fit.kv * fit.kv * a + fit.resistance * fit.resistance * c;
        double squares = 0;
        for (const SteadySpeed& reading : stand.readings) {
            const double model = stand.speed(reading, fit.kv, fit.resistance);
            if (!(model > 0)) {
                fit.isSound = false;
                return fit;
            }
            const double r = std::log(reading.speed / model);
            const double weight = 1 / std::pow(readingDoubt(reading, options), 2);
            const double d0 =
                std::log(stand.speed(reading, fit.kv + kSpeedStep, fit.resistance) / model) /
                kSpeedStep;
            const double d1 =
                std::log(stand.speed(reading, fit.kv, fit.resistance + kSpeedStep) / model) /
                kSpeedStep;
            a += weight * d0 * d0;
            b += weight * d0 * d1;
            c += weight * d1 * d1;
            g0 += weight * d0 * r;
            g1 += weight * d1 * r;
            fit.misfit += weight * r * r;
            squares += r * r;
        }
        fit.residual = std::sqrt(squares / static_cast<double>(stand.readings.size()));
        const double determinant = a * c - b * b;
        double step0 = g0 / a, step1 = 0;
        if (isResistanceFree) {
            step0 = (c * g0 - b * g1) / determinant;
            step1 = (a * g1 - b * g0) / determinant;
        }
        if (std::abs(step0) + std::abs(step1) < 1e-12)
            break;
        const double length = std::max({1.0, std::abs(step0) / 0.5, std::abs(step1)});
        fit.kv += step0 / length;
        fit.resistance += step1 / length;
    }
    const double determinant = a * c - b * b;
    fit.kvVariance = c / determinant;
    fit.resistanceVariance = a / determinant;
    fit.isSound = std::isfinite(fit.kv + fit.resistance + fit.kvVariance);
    return fit;
}

// Above this the readings and the doubts of before do not go together: three standard deviations of
// a sum of so many squares, and three for how skew it is with few.
double mostSpeedMisfit(std::size_t readings)
{
    const auto count = static_cast<double>(readings);
    return count + 3 * std::sqrt(2 * count) + 3;
}

double speedResidual(const Stand& stand)
{
    double squares = 0;
    for (const SteadySpeed& reading : stand.readings) {
        const double model = stand.speed(reading, 0, 0);
        squares += model > 0 ? std::pow(std::log(reading.speed / model), 2) : 1.0;
    }
    return std::sqrt(squares / static_cast<double>(stand.readings.size()));
}

// What a motor draws at a speed.
double currentAt(const DriveModel& drive, double speed)
{
    const double torque = drive.powerCoefficient / (2 * std::numbers::pi) * drive.airDensity *
                          std::pow(drive.diameter, 5) * speed * speed;
    return 2 * std::numbers::pi * drive.kv * torque + drive.noLoadCurrent;
}

struct PackFit {
    double resistance = 0.0, spread = 0.0;
};

// The slope of the voltage at the plug over the current drawn from the pack.
std::optional<PackFit> packResistance(const Stand& stand, const SpeedFit& fit,
                                      const SpeedDoubts& doubts, const SpeedOptions& options)
{
    DriveModel drive = stand.drive;
    drive.kv *= std::exp(fit.kv);
    double n = 0, sumI = 0, sumV = 0, sumII = 0, sumIV = 0;
    for (const SteadySpeed& reading : stand.readings) {
        if (!reading.voltage)
            return {};
        const double current =
            drive.motors * dutyAt(drive, reading.throttle) * currentAt(drive, reading.speed);
        n += 1;
        sumI += current;
        sumV += *reading.voltage;
        sumII += current * current;
        sumIV += current * *reading.voltage;
    }
    const double spreadI = sumII - sumI * sumI / n;
    const double slope = -(sumIV - sumI * sumV / n) / spreadI;
    const double ofVoltage =
        kVoltmeterRepeats * options.voltageSpread * sumV / n / std::sqrt(spreadI) / slope;
    if (!(slope > 0))
        return {};
    return PackFit{slope, std::hypot(ofVoltage, doubts.power)};
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
    SpeedTest(const Setup& setup, Stand stand, const SpeedDoubts& doubts,
              const SpeedOptions& options)
        : m_setup(setup), m_stand(std::move(stand)), m_doubts(doubts), m_options(options)
    {
        m_hasVoltage = m_stand.readings[0].voltage.has_value();
    }

    Result<Correction> answer();

private:
    bool areExplained(const SpeedFit& fit) const;
    Result<Correction> motorFigures(const SpeedFit& both, bool isKvFar);
    Result<Correction> throttleCurve();
    void addKv(Correction& correction, double change, double spread) const;
    double voltageDoubt() const;

    const Setup& m_setup;
    Stand m_stand;
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

bool SpeedTest::areExplained(const SpeedFit& fit) const
{
    return fit.isSound && fit.misfit <= mostSpeedMisfit(m_stand.readings.size());
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
    correction.measurement = measurementText(m_stand.readings.size());
    correction.residualBefore = speedResidual(m_stand);
    const bool isResistanceTold =
        std::sqrt(both.resistanceVariance) < kSpeedTold * m_doubts.resistance;
    SpeedDoubts doubts = m_doubts;
    if (isKvFar)
        doubts.kv = kAnyKv;
    const SpeedFit fit = isResistanceTold ? both : fitSpeeds(m_stand, doubts, false, m_options);
    const double kvSpread = std::sqrt(both.kvVariance);
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
    if (const auto pack = packResistance(m_stand, fit, m_doubts, m_options);
        pack && pack->spread < kSpeedTold * m_doubts.pack)
        correction.values.push_back({kPack, phrase(kPackLabel), "mΩ",
                                     m_setup.drive.battery.resistance_mohm,
                                     pack->resistance / unit::mohm, pack->spread});
    correction.residual = fit.residual;
    const double last = m_stand.readings.back().throttle;
    if (isKvFar && last < m_setup.flight.cruise_throttle[1])
        correction.warnings.push_back(speedsEnd(last));
    if (!m_hasVoltage)
        correction.warnings.push_back(packTakenFull());
    if (correction.values.empty())
        correction.mark = {Quality::Poor, phrase(kTellsNothing)};
    else if (!areExplained(fit))
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
    const bool hadCurve = !m_stand.drive.throttleCurve.empty();
    Correction correction;
    correction.measurement = measurementText(m_stand.readings.size());
    correction.residualBefore = speedResidual(m_stand);
    DriveModel& drive = m_stand.drive;
    drive.throttleCurve.clear();
    const SteadySpeed& top = m_stand.readings.back();
    if (top.throttle >= kFullThrottle) {
        Stand atTop = m_stand;
        atTop.readings = {top};
        SpeedDoubts open = m_doubts;
        open.kv = 10;  // nothing but this reading
        const SpeedFit fit = fitSpeeds(atTop, open, false, m_options);
        if (!fit.isSound)
            return fail(Errc::NoAnswer, phrase(kNoKv));
        drive.kv *= std::exp(fit.kv);
        const double ofResistance =
            m_doubts.resistance *
            std::abs(std::log(atTop.speed(top, fit.kv, kSpeedStep) / atTop.speed(top, fit.kv, 0))) /
            kSpeedStep;
        addKv(correction, fit.kv, std::hypot(std::sqrt(fit.kvVariance), ofResistance));
    } else {
        correction.warnings.push_back(curveStandsOnKv());
    }
    ThrottleCurve curve;
    for (const SteadySpeed& reading : m_stand.readings) {
        const auto duty = throttleForSpeed(drive, reading.speed, m_stand.voltage(reading));
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
    correction.residual = speedResidual(m_stand);
    correction.throttleCurve = std::move(curve);
    double squares = voltageDoubt() * voltageDoubt();
    for (const SteadySpeed& reading : m_stand.readings)
        squares += std::pow(readingDoubt(reading, m_options), 2) /
                   static_cast<double>(m_stand.readings.size());
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
    const SpeedFit both = fitSpeeds(m_stand, m_doubts, true, m_options);
    if (areExplained(both))
        return motorFigures(both, false);
    // A KV far from the craft's, of another winding say, is no curve.
    SpeedDoubts any = m_doubts;
    any.kv = kAnyKv;
    const SpeedFit far = fitSpeeds(m_stand, any, true, m_options);
    return areExplained(far) ? motorFigures(far, true) : throttleCurve();
}

}  // namespace

Result<Correction> speedAtThrottle(const Setup& setup, std::span<const SteadySpeed> readings,
                                   const SpeedOptions& options)
{
    if (const auto valid = checkReadings(readings); !valid)
        return tl::unexpected(valid.error());
    const ExcitedAirframe craft = makeExcitedAirframe(setup);
    Stand stand{craft.drive, craft.fullVoltage, mergedReadings(readings)};
    if (stand.readings.size() < kFewestThrottles)
        return fail(Errc::BadInput,
                    phrase("There are readings at %1 throttles, at least 3 are needed",
                           whole(stand.readings.size())));
    if (stand.readings[0].voltage)
        stand.drive.packResistance = 0;
    const double power =
        craft.propeller.power_estimated ? kPowerDoubt : speedDoubtOf(setup, kPower, 0.08);
    return SpeedTest(setup, std::move(stand),
                     {speedDoubtOf(setup, kKv, kKvDoubt),
                      speedDoubtOf(setup, kResistance, kResistanceDoubt), power,
                      speedDoubtOf(setup, kPack, kPackDoubt)},
                     options)
        .answer();
}

}  // namespace stillbay
