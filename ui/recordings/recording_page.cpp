// SPDX-License-Identifier: MIT
#include "ui/recordings/recording_page.h"

#include "ui/charts/chart_heading.h"
#include "ui/charts/trace_chart.h"
#include "ui/recordings/column_pane.h"
#include "ui/recordings/part_row.h"
#include "ui/recordings/reading_strip.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/result_part.h"
#include "ui/recordings/sensor_pane.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"
#include "ui/widgets/section.h"
#include "ui/widgets/tall_scroll.h"

#include <QComboBox>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr int kRoomForAll = 720;  // [px] height from which columns and both charts fit
constexpr std::size_t kMostTraces = 6;
constexpr std::array kQuantities{Quantity::Acceleration, Quantity::AngularRate, Quantity::Sound,
                                 Quantity::Throttle,     Quantity::RotorSpeed,  Quantity::Other};

}  // namespace

RecordingPage::RecordingPage(QWidget* parent)
    : QWidget(parent),
      m_reading(new Section(tr("How it is read"))),
      m_columns(new ColumnPane),
      m_sensor(new SensorPane),
      m_strip(new ReadingStrip(OfWhat::Recording)),
      m_quantity(new QComboBox),
      m_trace(new TraceChart(this)),
      m_part(new PartRow(OfWhat::Recording)),
      m_result(new ResultPart(OfWhat::Recording))
{
    auto* const how = new QWidget;
    auto* const howLayout = new QVBoxLayout(how);
    howLayout->setContentsMargins(0, 0, 0, 0);
    howLayout->addWidget(m_columns);
    howLayout->addWidget(m_sensor);
    m_reading->add(new TallScroll(how));
    m_reading->rememberAs(QStringLiteral("recordings/reading"));
    connect(m_reading, &Section::toggled, this, &RecordingPage::fold);
    m_quantity->setAccessibleName(tr("What the trace shows"));
    m_quantity->setToolTip(tr("What of the recording is drawn."));
    m_quantity->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_trace->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);

    auto* const traceHeading =
        new ChartHeading(*m_trace, tr("draw the part that is used with the left button"));
    traceHeading->add(m_quantity);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(6, 4, 6, 4);
    layout->setSpacing(2);
    layout->addWidget(m_reading);
    layout->addWidget(m_strip);
    layout->addWidget(traceHeading);
    layout->addWidget(m_trace, 2);
    layout->addWidget(m_part);
    layout->addWidget(m_result, 3);

    connect(m_strip, &ReadingStrip::stopWanted, this, &RecordingPage::stopWanted);
    connect(m_strip, &ReadingStrip::readWanted, this, &RecordingPage::readWanted);
    connect(m_quantity, &QComboBox::activated, this, &RecordingPage::showTrace);
    connect(m_trace, &TraceChart::partWanted, m_part, &PartRow::want);
    connect(m_trace, &TraceChart::wholeWanted, this, [this] { emit partWanted({}, {}); });
    connect(m_part, &PartRow::partWanted, this, &RecordingPage::partWanted);
    showNothing();
}

void RecordingPage::showNothing()
{
    m_answer = {};
    m_columns->clear();
    m_reading->setSummary({});
    m_trace->clear();
    m_quantity->clear();
    m_quantity->hide();
    m_strip->clear();
    m_result->setStale(false);
    m_result->setCharts({});
    m_part->setLength(0.0, 0.0);
    setPart({}, {});
}

void RecordingPage::showReading()
{
    m_strip->showReading(tr("Reading…"));
}

void RecordingPage::showStopped()
{
    m_strip->showStopped();
}

void RecordingPage::advance(int step, int steps)
{
    m_strip->advance(step, steps);
}

void RecordingPage::showAnswer(const ReadAnswer& answer)
{
    m_answer = answer;
    m_columns->setPlan(answer.guessed, answer.plan);
    m_reading->setSummary(m_columns->summary());
    if (!answer.recording && !answer.failure)
        return;  // more is to come
    if (answer.failure) {
        m_strip->clear();
        m_part->setLength(0.0, 0.0);
        return m_trace->clear();
    }
    const Recording& recording = *answer.recording;
    showState(recording);
    const QString before = m_quantity->currentText();
    m_quantity->clear();
    for (const Quantity quantity : kQuantities)
        if (std::any_of(recording.channels.begin(), recording.channels.end(),
                        [&](const Channel& channel) { return channel.quantity == quantity; }))
            m_quantity->addItem(quantityName(quantity), static_cast<int>(quantity));
    m_quantity->setCurrentIndex(std::max(0, m_quantity->findText(before)));
    m_quantity->setVisible(m_quantity->count() > 1);
    m_part->setLength(recording.duration(), 1.0 / recording.rate);
    showTrace();
}

void RecordingPage::showState(const Recording& recording)
{
    QString text = tr("%1 samples at %2 Hz, %3 s")
                       .arg(QLocale().toString(static_cast<qulonglong>(recording.samples())),
                            plainNumber(recording.rate, 6), plainNumber(recording.duration(), 4));
    if (recording.flaws.empty())
        return m_strip->showState(text);
    QStringList flaws;
    for (const RecordingFlaw& flaw : recording.flaws)
        flaws << displayText(flaw.text);
    text += QStringLiteral(" · ") + flaws.front() +
            (flaws.size() > 1 ? tr(" (and %1 more)").arg(flaws.size() - 1) : QString());
    m_strip->showState(
        text, QStringLiteral("<p>%1</p>")
                  .arg(flaws.join(u'\n').toHtmlEscaped().replace(u'\n', QStringLiteral("<br>"))));
}

void RecordingPage::showTrace()
{
    if (!m_answer.recording)
        return m_trace->clear();
    const Recording& recording = *m_answer.recording;
    const auto quantity = static_cast<Quantity>(m_quantity->currentData().toInt());
    TraceShown shown;
    shown.quantity = quantityTitle(quantity);
    shown.rate = recording.rate;
    for (std::size_t c = 0; c < recording.channels.size(); ++c)
        if (recording.channels[c].quantity == quantity && shown.channels.size() < kMostTraces) {
            const QString name = QString::fromStdString(recording.channels[c].name);
            shown.channels.push_back({name, name, m_answer.envelopes[c]});
        }
    m_trace->setTrace(shown);
}

void RecordingPage::setNamed(const NamedRecording& named, const std::vector<Arm>& arms)
{
    m_sensor->setVisible(named.kind != RecordingKind::Sound && named.kind != RecordingKind::Film);
    m_sensor->setSensor(named, arms);
    setPart(named.from_s, named.to_s);
}

void RecordingPage::setPart(std::optional<double> from_s, std::optional<double> to_s)
{
    const double end = m_trace->end();
    m_trace->setPart(from_s || to_s ? std::optional(Span{from_s.value_or(0.0), to_s.value_or(end)})
                                    : std::nullopt);
    m_part->setPart(from_s, to_s);
}

void RecordingPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    fold();
}

// Where there is no room for all, the columns stand instead of what the recording shows.
void RecordingPage::fold()
{
    m_result->setVisible(!m_reading->isOpen() || height() >= kRoomForAll);
}

}  // namespace stillbay::ui
