// SPDX-License-Identifier: MIT
#include "ui/recordings/recording_page.h"

#include "ui/charts/chart_heading.h"
#include "ui/charts/trace_chart.h"
#include "ui/recordings/column_pane.h"
#include "ui/recordings/recording_words.h"
#include "ui/recordings/sensor_pane.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/plain_number.h"
#include "ui/widgets/section.h"
#include "ui/widgets/tall_scroll.h"
#include "ui/widgets/thin_progress.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>
#include <array>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr int kReadingProgressHeight = 4;
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
      m_state(new QLabel),
      m_progress(new ThinProgress(tr("Progress of the reading"), kReadingProgressHeight)),
      m_stop(new QPushButton(tr("Stop"))),
      m_quantity(new QComboBox),
      m_trace(new TraceChart(this)),
      m_from(new NumberBox),
      m_to(new NumberBox),
      m_whole(new QPushButton(tr("All of it"))),
      m_working(new QLabel),
      m_which(new QComboBox),
      m_result(new MeasuredChart(this)),
      m_resultPart(new QWidget)
{
    auto* const how = new QWidget;
    auto* const howLayout = new QVBoxLayout(how);
    howLayout->setContentsMargins(0, 0, 0, 0);
    howLayout->addWidget(m_columns);
    howLayout->addWidget(m_sensor);
    m_reading->add(new TallScroll(how));
    m_reading->rememberAs(QStringLiteral("recordings/reading"));
    connect(m_reading, &Section::toggled, this, &RecordingPage::fold);
    m_stop->setAccessibleName(tr("Stop reading, or read again"));
    m_quantity->setAccessibleName(tr("What the trace shows"));
    m_quantity->setToolTip(tr("What of the recording is drawn."));
    m_which->setAccessibleName(tr("What is shown below the trace"));
    for (QComboBox* box : {m_quantity, m_which})
        box->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_from->setAccessibleName(tr("Beginning of the part"));
    m_to->setAccessibleName(tr("End of the part"));
    for (NumberBox* box : {m_from, m_to}) {
        box->setUnit(QStringLiteral("s"));
        box->setToolTip(
            tr("In seconds since the beginning of the recording. In the trace a part "
               "is drawn with the left button, or moved by its ends; a double click "
               "takes all."));
        connect(box, &NumberBox::valueChanged, this, &RecordingPage::typedPart);
    }
    m_whole->setAccessibleName(tr("Use all of the recording"));
    m_whole->setToolTip(tr("Uses the recording from its beginning to its end."));
    for (Chart* chart : {static_cast<Chart*>(m_trace), static_cast<Chart*>(m_result)})
        chart->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);

    m_state->setWordWrap(true);
    auto* const state = new QHBoxLayout;
    state->addWidget(m_state, 1);
    state->addWidget(m_stop);
    auto* const traceHeading =
        new ChartHeading(*m_trace, tr("draw the part that is used with the left button"));
    traceHeading->add(m_quantity);
    auto* const part = new QHBoxLayout;
    part->setContentsMargins(4, 0, 4, 0);
    part->addWidget(new QLabel(tr("Used from")));
    part->addWidget(m_from);
    part->addWidget(new QLabel(tr("to", "end of the part of a recording")));
    part->addWidget(m_to);
    part->addWidget(m_whole);
    part->addStretch(1);
    auto* const resultHeading = new ChartHeading(*m_result, tr("dashed: as the craft predicts it"));
    resultHeading->add(m_which);
    auto* const result = new QVBoxLayout(m_resultPart);
    result->setContentsMargins(0, 0, 0, 0);
    result->setSpacing(2);
    result->addWidget(resultHeading);
    result->addWidget(m_result, 1);
    m_working->setAlignment(Qt::AlignCenter);
    m_working->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    result->addWidget(m_working, 1);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(6, 4, 6, 4);
    layout->setSpacing(2);
    layout->addWidget(m_reading);
    layout->addLayout(state);
    layout->addWidget(m_progress);
    layout->addWidget(traceHeading);
    layout->addWidget(m_trace, 2);
    layout->addLayout(part);
    layout->addWidget(m_resultPart, 3);

    connect(m_stop, &QPushButton::clicked, this, [this] {
        if (m_isStopped)
            emit readWanted();
        else
            emit stopWanted();
    });
    connect(m_quantity, &QComboBox::activated, this, &RecordingPage::showTrace);
    connect(m_trace, &TraceChart::partWanted, this, &RecordingPage::tellPart);
    const auto takeAll = [this] {
        emit partWanted({}, {});
    };
    connect(m_trace, &TraceChart::wholeWanted, this, takeAll);
    connect(m_whole, &QPushButton::clicked, this, takeAll);
    connect(m_which, &QComboBox::activated, this, [this] {
        m_wantedChart = m_which->currentText();
        showChart();
    });
    showNothing();
}

void RecordingPage::showNothing()
{
    m_answer = {};
    m_isStopped = false;
    m_columns->clear();
    m_reading->setSummary({});
    m_trace->clear();
    m_quantity->clear();
    m_quantity->hide();
    m_state->clear();
    m_stop->hide();
    m_progress->hide();
    m_isStale = false;
    setCharts({});
    setPart({}, {});
}

void RecordingPage::showReading()
{
    m_isStopped = false;
    m_state->setText(tr("Reading…"));
    m_stop->setText(tr("Stop"));
    m_stop->show();
}

void RecordingPage::showStopped()
{
    m_isStopped = true;
    m_progress->hide();
    m_state->setText(tr("Reading was stopped."));
    m_stop->setText(tr("Read again"));
    m_stop->show();
}

void RecordingPage::advance(int step, int steps)
{
    m_progress->advance(step, steps);
}

void RecordingPage::showAnswer(const ReadAnswer& answer)
{
    m_answer = answer;
    m_columns->setPlan(answer.guessed, answer.plan);
    m_reading->setSummary(m_columns->summary());
    if (!answer.recording && !answer.failure)
        return;  // more is to come
    m_isStopped = false;
    m_stop->hide();
    m_progress->hide();
    m_state->clear();
    if (answer.failure)
        return m_trace->clear();
    const Recording& recording = *answer.recording;
    m_state->setText(tr("%1 samples at %2 Hz, %3 s")
                         .arg(QLocale().toString(static_cast<qulonglong>(recording.samples())),
                              plainNumber(recording.rate, 6),
                              plainNumber(recording.duration(), 4)));
    if (!recording.flaws.empty()) {
        QStringList flaws;
        for (const RecordingFlaw& flaw : recording.flaws)
            flaws << displayText(flaw.text);
        m_state->setText(
            m_state->text() + QStringLiteral(" · ") + flaws.front() +
            (flaws.size() > 1 ? tr(" (and %1 more)").arg(flaws.size() - 1) : QString()));
        m_state->setToolTip(
            QStringLiteral("<p>%1</p>")
                .arg(flaws.join(u'\n').toHtmlEscaped().replace(u'\n', QStringLiteral("<br>"))));
    } else {
        m_state->setToolTip({});
    }
    const QString before = m_quantity->currentText();
    m_quantity->clear();
    for (const Quantity quantity : kQuantities)
        if (std::any_of(recording.channels.begin(), recording.channels.end(),
                        [&](const Channel& channel) { return channel.quantity == quantity; }))
            m_quantity->addItem(quantityName(quantity), static_cast<int>(quantity));
    m_quantity->setCurrentIndex(std::max(0, m_quantity->findText(before)));
    m_quantity->setVisible(m_quantity->count() > 1);
    {
        const QSignalBlocker quietFrom(m_from), quietTo(m_to);
        m_from->setRange(0.0, recording.duration());
        m_to->setRange(0.0, recording.duration());
    }
    showTrace();
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
    const QSignalBlocker quietFrom(m_from), quietTo(m_to);
    m_from->show(from_s.value_or(0.0));
    m_to->show(to_s.value_or(end));
    const bool isRead = m_answer.recording != nullptr;
    for (QWidget* control : {static_cast<QWidget*>(m_from), static_cast<QWidget*>(m_to)})
        control->setEnabled(isRead);
    m_whole->setEnabled(isRead && (from_s || to_s));
}

void RecordingPage::typedPart()
{
    if (m_answer.recording)
        tellPart(m_from->value(), m_to->value());
}

// From the first sample or to the last one is no choice.
void RecordingPage::tellPart(double from, double to)
{
    const double sample = 1.0 / m_answer.recording->rate;
    emit partWanted(from >= sample ? std::optional(from) : std::nullopt,
                    to <= m_trace->end() - sample ? std::optional(to) : std::nullopt);
}

void RecordingPage::setCharts(const std::vector<MeasuredShown>& charts)
{
    m_charts = charts;
    const QSignalBlocker quiet(m_which);
    m_which->clear();
    for (const MeasuredShown& chart : charts)
        m_which->addItem(chart.name);
    m_which->setCurrentIndex(std::max(0, m_which->findText(m_wantedChart)));
    m_which->setVisible(charts.size() > 1);
    showChart();
}

void RecordingPage::showChart()
{
    const auto which = static_cast<std::size_t>(std::max(0, m_which->currentIndex()));
    if (which < m_charts.size())
        m_result->setMeasured(m_charts[which]);
    else
        m_result->clear();
    showWorking();
}

// In the chart's place, which has no axes yet.
void RecordingPage::showWorking()
{
    m_working->setText(m_isStale ? tr("Working out what it shows…") : QString());
    m_working->setVisible(m_charts.empty());
    m_result->setVisible(!m_charts.empty());
}

void RecordingPage::setStale(bool stale)
{
    m_isStale = stale;
    m_result->setStale(stale);
    showWorking();
}

void RecordingPage::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    fold();
}

// Where there is no room for all, the columns stand instead of what the recording shows.
void RecordingPage::fold()
{
    m_resultPart->setVisible(!m_reading->isOpen() || height() >= kRoomForAll);
}

}  // namespace stillbay::ui
