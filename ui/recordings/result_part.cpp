// SPDX-License-Identifier: MIT
#include "ui/recordings/result_part.h"

#include "ui/charts/chart_heading.h"

#include <QComboBox>
#include <QLabel>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {

ResultPart::ResultPart(OfWhat what, QWidget* parent)
    : QWidget(parent),
      m_which(new QComboBox),
      m_chart(new MeasuredChart(
          what == OfWhat::Film ? tr("What the film shows") : tr("What it shows"), this)),
      m_working(new QLabel)
{
    m_which->setAccessibleName(what == OfWhat::Film ? tr("What is shown of the film")
                                                    : tr("What is shown of it"));
    m_which->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    m_chart->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    m_working->setAlignment(Qt::AlignCenter);
    m_working->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    auto* const heading =
        new ChartHeading(*m_chart, what == OfWhat::Film ? tr("beside what the craft predicts")
                                                        : tr("dashed: as the craft predicts it"));
    heading->add(m_which);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(heading);
    layout->addWidget(m_chart, 1);
    layout->addWidget(m_working, 1);
    connect(m_which, &QComboBox::activated, this, [this] {
        m_wanted = m_which->currentText();
        showChart();
    });
    setCharts({});
}

void ResultPart::setCharts(const std::vector<MeasuredShown>& charts)
{
    m_charts = charts;
    const QSignalBlocker quiet(m_which);
    m_which->clear();
    for (const MeasuredShown& chart : charts)
        m_which->addItem(chart.name);
    m_which->setCurrentIndex(std::max(0, m_which->findText(m_wanted)));
    m_which->setVisible(charts.size() > 1);
    showChart();
}

void ResultPart::showChart()
{
    const auto which = static_cast<std::size_t>(std::max(0, m_which->currentIndex()));
    if (which < m_charts.size())
        m_chart->setMeasured(m_charts[which]);
    else
        m_chart->clear();
    showWorking();
}

// In the chart's place, which has no axes yet.
void ResultPart::showWorking()
{
    const QString working = m_howFar.isEmpty() ? tr("Working out what it shows…") : m_howFar;
    m_working->setText(m_isStale ? working : QString());
    m_working->setVisible(m_charts.empty());
    m_chart->setVisible(!m_charts.empty());
}

void ResultPart::setStale(bool stale)
{
    m_isStale = stale;
    m_chart->setStale(stale);
    showWorking();
}

void ResultPart::setWorking(const QString& text)
{
    m_howFar = text;
    showWorking();
}

}  // namespace stillbay::ui
