// SPDX-License-Identifier: MIT
#include "ui/craft/thrust_dialog.h"

#include "core/advice/uncertain_inputs.h"
#include "core/base/units.h"
#include "core/craft/craft.h"
#include "core/setup/sources.h"
#include "ui/charts/fit_chart.h"
#include "ui/craft/column_table.h"
#include "ui/document/read_file.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/plain_number.h"

#include <QCheckBox>
#include <QDate>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QPushButton>
#include <QSettings>

#include <cmath>
#include <set>

namespace stillbay::ui {
namespace {

constexpr double kUsualAccuracy_percent = 2.0;  // of a kitchen scale and a speed by light: a guess
constexpr double kResistance = 0.1;             // spreads of what a data sheet says: a guess
constexpr double kNoLoadCurrent = 0.2;
constexpr double kWider = 1.65;        // than other helpers
constexpr double kLeastSpread = 1e-4;  // that the setup can say
constexpr double kGram = unit::g * kGravity;
const QString kFolder = QStringLiteral("files/last-table-folder");  // key of the settings

constexpr const char* kThrustKey = "drive.propeller.thrust_coefficient";
constexpr const char* kPowerKey = "drive.propeller.power_coefficient";
constexpr const char* kKvKey = "drive.motor.kv_rpm_per_v";

double spreadSaid(const Setup& setup, const char* key, double usual)
{
    const Source* const source = sourceOf(setup, key);
    return source ? source->spread.value_or(usual) : usual;
}

// In a free function: inside of a class the window would not find its translation.
Result<void> nothingFitted()
{
    return fail(Errc::BadInput, phrase("no table gives coefficients yet"));
}

// To the digits that the setup's fields show.
double rounded4(double value)
{
    return std::round(1e4 * value) / 1e4;
}

double coefficientOf(const Fitted& fitted)
{
    return rounded4(fitted.fit.slope);
}

double kv_rpm_per_v(const Fitted& fitted)
{
    return std::round(fitted.fit.slope / unit::rpm);
}

// "0.116 ± 4 %"
QString withSpread(double value, int digits, double spread)
{
    return ThrustDialog::tr("%1 ± %2 %")
        .arg(plainNumber(value, digits), plainNumber(kPercent * spread, 2));
}

FitShown shown(const std::optional<Fitted>& fitted, double perTurns, double power, double unitOf,
               double spread)
{
    FitShown fit;
    if (!fitted)
        return fit;
    for (const FittedPoint& point : fitted->points)
        (point.isLeftOut ? fit.leftOut : fit.points)
            << QPointF(point.speed / unit::rpm, point.value / unitOf);
    fit.power = power;
    fit.factor = fitted->fit.slope * perTurns * std::pow(unit::rpm, power) / unitOf;
    fit.spread = spread;
    return fit;
}

}  // namespace

ThrustDialog::ThrustDialog(Document& document, QWidget* parent)
    : HelperDialog(document, tr("From a thrust table"),
                   tr("Thrust and power over the speed, noted on a thrust stand, give the "
                      "propeller's coefficients; voltage, current and throttle beside them give "
                      "KV."),
                   parent),
      m_density(nullptr),
      m_accuracy(nullptr),
      m_file(new ElidedLabel(Qt::AlignLeft | Qt::AlignVCenter, this)),
      m_columns(new ColumnTable(this)),
      m_takesKv(new QCheckBox(tr("Take KV as well"), this))
{
    auto* const open = new QPushButton(tr("&Open a table…"), this);
    open->setAutoDefault(false);
    open->setToolTip(
        tr("<p>A text file with one row a throttle: comma, semicolon or tab between "
           "the cells, with or without a row of names.</p>"));
    connect(open, &QPushButton::clicked, this, &ThrustDialog::askForTable);
    auto* const file = new QWidget(this);
    auto* const line = new QHBoxLayout(file);
    line->setContentsMargins(0, 0, 0, 0);
    line->addWidget(open);
    line->addWidget(m_file, 1);
    addRow(tr("Table"), file);
    m_density =
        addNumber({tr("Air density at the stand"), tr("kg/m³"),
                   tr("1.2 near the sea in mild weather, about 1.0 at 1800 m."), 0.3, 2.0, 0.01});
    m_accuracy = addNumber(
        {tr("Accuracy of the stand"), tr("%"),
         tr("By how much scale and meters may be off in all rows alike; a known mass on the scale "
            "tells."),
         0.0, 50.0, 0.5});
    addWidget(m_columns);
    addWidget(makeCharts());
    m_takesKv->setToolTip(
        tr("<p>Only where the throttle noted is the share of the voltage that "
           "the motor gets.</p>"));
    addChoice(m_takesKv);
    m_density->show(setup().flight.air_density_kg_m3);
    m_accuracy->show(kUsualAccuracy_percent);
    for (NumberBox* box : {m_density, m_accuracy})
        connect(box, &NumberBox::valueChanged, this, &ThrustDialog::recompute);
    connect(m_columns, &ColumnTable::chosen, this, &ThrustDialog::recompute);
    setMinimumWidth(qRound(kWider * minimumWidth()));  // two charts and a table of some columns
    showNothing();
}

QWidget* ThrustDialog::makeCharts()
{
    auto* const charts = new QWidget(this);
    auto* const line = new QHBoxLayout(charts);
    line->setContentsMargins(0, 0, 0, 0);
    const FitChart::Quantity speed{tr("Speed"), tr("rpm"), QStringLiteral("speed_rpm")};
    m_thrust = new FitChart(tr("Thrust over speed"), speed,
                            {tr("Thrust"), tr("g"), QStringLiteral("thrust_g")}, charts);
    m_power = new FitChart(tr("Shaft power over speed"), speed,
                           {tr("Shaft power"), tr("W"), QStringLiteral("shaft_power_w")}, charts);
    line->addWidget(m_thrust, 1);
    line->addWidget(m_power, 1);
    return charts;
}

void ThrustDialog::askForTable()
{
    QSettings settings;
    const QString path = QFileDialog::getOpenFileName(
        this, tr("Open a thrust table"), settings.value(kFolder, QDir::homePath()).toString(),
        tr("Tables (*.csv *.tsv *.txt);;All files (*)"));
    if (path.isEmpty())
        return;
    settings.setValue(kFolder, QFileInfo(path).absolutePath());
    openTable(path);
}

void ThrustDialog::openTable(const QString& path)
{
    const Result<QByteArray> bytes = readFile(path, static_cast<qint64>(TableLimits{}.bytes));
    const Result<TextTable> table =
        bytes.and_then([](const QByteArray& text) { return readTextTable(text.toStdString()); });
    m_fileName = QFileInfo(path).fileName();
    m_file->setText(m_fileName);
    m_table.reset();
    m_fit.reset();
    if (!table) {
        m_columns->setTable({}, {});
        showNothing();
        setProblem(tr("Not opened: %1.").arg(displayText(table.error().what)));
        return;
    }
    m_table = *table;
    m_columns->setTable(*m_table, guessColumns(*m_table));
    recompute();
}

ThrustStand ThrustDialog::stand() const
{
    ThrustStand stand{.drive = makeExcitedAirframe(setup()).drive};
    stand.drive.airDensity = m_density->value();
    stand.spread = {
        .kv = stillbay::spreadOf(setup(), kKvKey).value_or(0.0),
        .motorResistance = spreadSaid(setup(), "drive.motor.resistance_mohm", kResistance),
        .noLoadCurrent = spreadSaid(setup(), "drive.motor.no_load_current_a", kNoLoadCurrent),
        .powerCoefficient = stillbay::spreadOf(setup(), kPowerKey).value_or(0.0)};
    return stand;
}

double ThrustDialog::spreadOf(const Fitted& fitted) const
{
    const double spread = std::hypot(fitted.spread(), m_accuracy->value() / kPercent);
    return std::max(rounded4(spread), kLeastSpread);
}

void ThrustDialog::recompute()
{
    if (!m_table)
        return;
    const ThrustReadings readings = readThrust(*m_table, m_columns->choices());
    const Result<ThrustFit> fit = fitThrust(readings.rows, stand());
    if (fit) {
        m_fit = *fit;
        setProblem({});
        showFit(readings);
        return;
    }
    m_fit.reset();
    showNothing();
    m_columns->mark(readings.bad, {});
    setProblem(tr("No coefficients: %1.").arg(displayText(fit.error().what)));
}

void ThrustDialog::showFit(const ThrustReadings& readings)
{
    const double D = setup().drive.propeller.diameter_in * unit::inch;
    const double density = m_density->value();
    m_thrust->setFit(shown(m_fit->thrust, density * std::pow(D, 4), 2.0, kGram,
                           m_fit->thrust ? spreadOf(*m_fit->thrust) : 0.0));
    m_power->setFit(shown(m_fit->power, density * std::pow(D, 5), 3.0, 1.0,
                          m_fit->power ? spreadOf(*m_fit->power) : 0.0));
    std::set<std::size_t> leftOut;
    for (const std::optional<Fitted>* fitted : {&m_fit->thrust, &m_fit->power})
        if (*fitted)
            for (const FittedPoint& point : (*fitted)->points)
                if (point.isLeftOut)
                    leftOut.insert(point.line);
    m_columns->mark(readings.bad, leftOut);
    m_takesKv->setEnabled(m_fit->kv.has_value());
    if (!m_fit->kv)
        m_takesKv->setChecked(false);
    setOutcome(outcomeLines());
    QStringList notes;
    if (!readings.bad.empty())
        notes
            << tr("Cells that cannot be read, in bold in the table: %1.").arg(readings.bad.size());
    for (const Phrase& note : thrustNotes(*m_fit))
        notes << displayText(note);
    addNote(notes.join(u' '));
}

void ThrustDialog::showNothing()
{
    m_thrust->clear();
    m_power->clear();
    m_takesKv->setEnabled(false);
    m_takesKv->setChecked(false);
    setOutcome({});
    addNote(
        tr("A row for each throttle: its speed, its thrust, and torque or power, or voltage "
           "and current. Where the speed is missing, throttle and voltage will do."));
}

QStringList ThrustDialog::outcomeLines() const
{
    const PropellerFigures now = propellerFigures(setup().drive.propeller);
    const auto spreadNow = [this](const char* key) {
        return stillbay::spreadOf(setup(), key).value_or(0.0);
    };
    QStringList lines;
    if (m_fit->thrust)
        lines << tr("Thrust coefficient: %1 now, %2 then, from %3 rows.")
                     .arg(withSpread(now.thrust_coefficient, 3, spreadNow(kThrustKey)),
                          withSpread(coefficientOf(*m_fit->thrust), 4, spreadOf(*m_fit->thrust)))
                     .arg(m_fit->thrust->fit.points);
    if (m_fit->power)
        lines << tr("Power coefficient: %1 now, %2 then, from %3 rows.")
                     .arg(withSpread(now.power_coefficient, 3, spreadNow(kPowerKey)),
                          withSpread(coefficientOf(*m_fit->power), 4, spreadOf(*m_fit->power)))
                     .arg(m_fit->power->fit.points);
    if (m_fit->kv)
        lines << tr("KV: %1 now, %2 by the table, from %3 rows.")
                     .arg(withSpread(setup().drive.motor.kv_rpm_per_v, 4, spreadNow(kKvKey)),
                          withSpread(kv_rpm_per_v(*m_fit->kv), 4, spreadOf(*m_fit->kv)))
                     .arg(m_fit->kv->fit.points);
    return lines;
}

Result<void> ThrustDialog::apply()
{
    if (!m_fit)
        return nothingFitted();
    const auto note = [this](Setup& setup, const char* key, const Fitted& fitted) {
        putSource(setup, {.key = key,
                          .from = Origin::Measured,
                          .spread = spreadOf(fitted),
                          .note = tr("thrust stand, %1").arg(m_fileName).toStdString(),
                          .date = QDate::currentDate().toString(Qt::ISODate).toStdString()});
    };
    return document().edit(tr("take the thrust table"), {}, [&](Setup& setup) {
        if (m_fit->thrust) {
            setup.drive.propeller.thrust_coefficient = coefficientOf(*m_fit->thrust);
            note(setup, kThrustKey, *m_fit->thrust);
        }
        if (m_fit->power) {
            setup.drive.propeller.power_coefficient = coefficientOf(*m_fit->power);
            note(setup, kPowerKey, *m_fit->power);
        }
        if (m_fit->kv && m_takesKv->isChecked()) {
            setup.drive.motor.kv_rpm_per_v = kv_rpm_per_v(*m_fit->kv);
            note(setup, kKvKey, *m_fit->kv);
        }
    });
}

}  // namespace stillbay::ui
