// SPDX-License-Identifier: MIT
#include "ui/craft/exposure_dialog.h"

#include "core/base/units.h"
#include "core/film/exposure.h"
#include "core/setup/sources.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/plain_number.h"

#include <QLocale>

#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kMostStops = 20.0;
constexpr double kShortest_ms = 0.001;  // as the field itself
constexpr double kLeast_deg = 1e-4;     // below that of any such exposure

QString fourDigits(double value)
{
    return plainNumber(value, 4);
}

// To a ten-thousandth of a millisecond: a frame's sixtieth of a second still fits.
double rounded_ms(double exposure)
{
    return std::round(1e4 * exposure / unit::ms) / 1e4;
}

// Past the tenth of a degree that rounding makes.
bool isBeyondFrame(double shutter_deg)
{
    return std::round(10.0 * shutter_deg) > 10.0 * kFullShutter_deg;
}

}  // namespace

ExposureDialog::ExposureDialog(Document& document, QWidget* parent)
    : HelperDialog(document, tr("Shutter and filter"),
                   tr("The camera takes %1 frames a second, %2 ms each. A shutter angle is the "
                      "share of that time, out of 360°, in which a row collects light.")
                       .arg(fourDigits(document.setup().camera.frame_rate_hz),
                            fourDigits(1.0 / document.setup().camera.frame_rate_hz / unit::ms)),
                   parent),
      m_shutter(addNumber({tr("Shutter angle without the filter"), tr("°"),
                           tr("180° is what film usually has: common practice."), kLeast_deg,
                           kFullShutter_deg, 10.0})),
      m_exposure(
          addNumber({tr("Exposure without the filter"), tr("ms"),
                     tr("How long a row collects light; 2 ms is a shutter of 1/500 s."),
                     kShortest_ms, rounded_ms(1.0 / document.setup().camera.frame_rate_hz), 0.1})),
      m_stops(addNumber({tr("Filter put on"), tr("stops"),
                         tr("Each stop of a neutral-density filter halves the light, so that the "
                            "exposure doubles; ND8 has three. Below zero: filter taken off."),
                         -kMostStops, kMostStops, 1.0}))
{
    addNote(tr(
        "The camera, set to its own exposure, takes as much longer as the filter makes the picture "
        "darker. Longer exposures blur fast vibration away, and everything else that moves."));
    const double rate_hz = setup().camera.frame_rate_hz;
    m_exposure->show(setup().camera.exposure_ms);
    m_shutter->show(shutterOfExposure_deg(m_exposure->value() * unit::ms, rate_hz));
    m_stops->show(0.0);
    connect(m_shutter, &NumberBox::valueChanged, this, [this, rate_hz](double shutter_deg) {
        m_exposure->show(rounded_ms(exposureOfShutter(shutter_deg, rate_hz)));
        recompute();
    });
    connect(m_exposure, &NumberBox::valueChanged, this, [this, rate_hz](double exposure_ms) {
        m_shutter->show(shutterOfExposure_deg(exposure_ms * unit::ms, rate_hz));
        recompute();
    });
    connect(m_stops, &NumberBox::valueChanged, this, &ExposureDialog::recompute);
    recompute();
}

double ExposureDialog::exposure_ms() const
{
    return rounded_ms(exposureBehindFilter(m_exposure->value() * unit::ms, m_stops->value()));
}

QString ExposureDialog::adviceLine(double now_ms) const
{
    const double usual = exposureOfShutter(kUsualShutter_deg, setup().camera.frame_rate_hz);
    const double stops = filterStops(now_ms * unit::ms, usual);
    const QString many = QLocale().toString(std::abs(stops), 'f', 1);
    return stops >= 0
               ? tr("A filter of %1 stops would make 180° of it, as film usually has.").arg(many)
               : tr("Without a filter it is %1 stops above the 180° film usually has.").arg(many);
}

QString ExposureDialog::filterLine() const
{
    const double stops = m_stops->value();
    if (stops == 0.0)
        return tr("No filter is put on or taken off.");
    const QString factor = fourDigits(exposureBehindFilter(1.0, std::abs(stops)));
    return stops > 0.0 ? tr("The filter lets 1/%1 of the light through.").arg(factor)
                       : tr("Without that filter %1 times the light comes in.").arg(factor);
}

void ExposureDialog::recompute()
{
    const double rate_hz = setup().camera.frame_rate_hz;
    const double then_ms = exposure_ms();
    const double shutter_deg = shutterOfExposure_deg(then_ms * unit::ms, rate_hz);
    setOutcome({tr("Exposure: %1 ms now, %2 ms then, a shutter angle of %3°.")
                    .arg(fourDigits(setup().camera.exposure_ms), fourDigits(then_ms),
                         fourDigits(shutter_deg)),
                filterLine(), adviceLine(m_exposure->value())});
    setProblem(isBeyondFrame(shutter_deg)
                   ? tr("Longer than the frame's time of %1 ms: the camera cannot do that. Take a "
                        "weaker filter.")
                         .arg(fourDigits(1.0 / rate_hz / unit::ms))
                   : QString());
}

Result<void> ExposureDialog::apply()
{
    return document().edit(tr("set shutter and filter"), {}, [this](Setup& setup) {
        setup.camera.exposure_ms = exposure_ms();
        dropSource(setup, "camera.exposure_ms");
    });
}

}  // namespace stillbay::ui
