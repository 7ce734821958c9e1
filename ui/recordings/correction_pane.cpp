// SPDX-License-Identifier: MIT
#include "ui/recordings/correction_pane.h"

#include "ui/recordings/quality_flag.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/plain_number.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr int kCellMargin = 12;      // [px] of a cell's text, both sides together
constexpr double kSameShare = 1e-6;  // nearer, the craft has the value already

QString withUnitBehind(const QString& number, const std::string& unit)
{
    return unit.empty() ? number : number + QChar(QChar::Nbsp) + QString::fromStdString(unit);
}

// So many digits that the spread is seen.
QString measuredText(const CorrectedValue& value)
{
    const double spread = std::abs(value.spread * value.after);
    int digits = 4;
    if (spread > 0.0 && value.after != 0.0)
        digits = std::clamp(
            2 + static_cast<int>(std::floor(std::log10(std::abs(value.after) / spread))), 2, 6);
    if (!(spread > 0.0))
        return withUnitBehind(plainNumber(value.after, digits), value.unit);
    return CorrectionPane::tr("%1 ± %2", "measured value and spread")
        .arg(plainNumber(value.after, digits), withUnitBehind(plainNumber(spread, 2), value.unit));
}

void showParagraphs(QLabel& label, const QStringList& paragraphs)
{
    label.setText(paragraphs.join(QStringLiteral("\n\n")));
    label.setVisible(!paragraphs.isEmpty());
}

bool isAccepted(const Correction& correction)
{
    return !correction.throttleCurve &&  // the craft that has it is corrected otherwise
           std::all_of(correction.values.begin(), correction.values.end(),
                       [](const CorrectedValue& value) {
                           return value.before && std::abs(*value.before - value.after) <=
                                                      kSameShare * std::abs(value.after);
                       });
}

}  // namespace

CorrectionPane::CorrectionPane(const QString& which, QWidget* parent)
    : QWidget(parent),
      m_sentence(new QLabel),
      m_flag(new QualityFlag),
      m_mark(new QLabel),
      m_reason(new QLabel),
      m_values(new QTableWidget(0, 3)),
      m_residual(new QLabel),
      m_warnings(new QLabel),
      m_notes(new QuietLabel),
      m_accept(new QPushButton(tr("Accept"))),
      m_problem(new ProblemLabel),
      m_below(new QVBoxLayout)
{
    for (QLabel* label : {m_sentence, m_mark, m_reason, m_residual, m_warnings}) {
        label->setWordWrap(label != m_mark);
        label->setTextFormat(Qt::PlainText);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        label->setFocusPolicy(Qt::NoFocus);
    }
    QFont bold = font();
    bold.setBold(true);
    m_mark->setFont(bold);
    m_values->setAccessibleName(tr("Correction %1").arg(which));
    m_values->setHorizontalHeaderLabels({tr("Number"), tr("now"), tr("measured")});
    m_values->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_values->setSelectionMode(QAbstractItemView::SingleSelection);
    m_values->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_values->setTabKeyNavigation(false);
    m_values->setShowGrid(false);
    m_values->setWordWrap(true);
    m_values->verticalHeader()->hide();
    m_values->horizontalHeader()->setHighlightSections(false);
    m_values->horizontalHeader()->setSectionsClickable(false);
    m_values->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    m_values->horizontalHeader()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
    m_values->horizontalHeader()->setSectionResizeMode(2, QHeaderView::ResizeToContents);
    m_values->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_accept->setAccessibleName(tr("Accept the correction %1").arg(which));
    m_accept->setToolTip(
        tr("Gives the craft the measured numbers, each with its spread, the "
           "measurement and the date as its source; one step to undo."));
    m_accept->setAutoDefault(true);
    auto* const mark = new QHBoxLayout;
    mark->addWidget(m_flag);
    mark->addWidget(m_mark);
    mark->addStretch(1);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 8, 8, 8);
    layout->setSpacing(8);
    layout->addWidget(m_sentence);
    layout->addLayout(mark);
    layout->addWidget(m_reason);
    layout->addWidget(m_values);
    layout->addWidget(m_residual);
    layout->addWidget(m_accept, 0, Qt::AlignLeft);
    layout->addWidget(m_problem);
    layout->addWidget(m_warnings);
    layout->addLayout(m_below);
    layout->addWidget(m_notes);
    // Once all columns have their widths.
    connect(m_values->horizontalHeader(), &QHeaderView::sectionResized, this,
            &CorrectionPane::fitRows, Qt::QueuedConnection);
    connect(m_accept, &QPushButton::clicked, this, [this] {
        if (m_correction)
            emit acceptWanted(*m_correction);
    });
    clear({});
}

void CorrectionPane::display(const QString& sentence, const std::optional<QualityMark>& mark,
                             const std::optional<Correction>& correction, const QStringList& notes)
{
    m_correction = correction;
    m_isStale = false;
    m_sentence->setText(sentence);
    m_sentence->setVisible(!sentence.isEmpty());
    m_flag->setVisible(mark.has_value());
    m_mark->setVisible(mark.has_value());
    m_reason->setVisible(mark.has_value());
    if (mark) {
        m_flag->display(mark->quality);
        m_mark->setText(qualityName(mark->quality));
        m_reason->setText(capitalised(displayText(mark->reason)));
    }
    showValues();
    QStringList warnings;
    if (correction)
        for (const Warning& warning : correction->warnings)
            warnings << displayText(warning.text);
    showParagraphs(*m_warnings, warnings);
    showParagraphs(*m_notes, notes);
    m_problem->format({});
}

void CorrectionPane::showValues()
{
    const bool has = m_correction && (!m_correction->values.empty() || m_correction->throttleCurve);
    m_values->setVisible(has);
    m_accept->setVisible(has);
    m_residual->setVisible(m_correction.has_value());
    if (!m_correction)
        return;
    const Correction& correction = *m_correction;
    const auto percent = [](double share) {
        return plainDecimals(100.0 * share, share < 0.1 ? 1 : 0);
    };
    m_residual->setText(
        correction.residualBefore
            ? tr("Left unexplained: %1 % with these numbers, %2 % before.")
                  .arg(percent(correction.residual), percent(*correction.residualBefore))
            : tr("Left unexplained: %1 % of what was measured.").arg(percent(correction.residual)));
    if (!has)
        return;
    const bool isDone = isAccepted(correction);
    m_accept->setText(isDone ? tr("Accepted") : tr("Accept"));
    showAccept();
    m_values->setRowCount(static_cast<int>(correction.values.size()));
    for (std::size_t k = 0; k < correction.values.size(); ++k) {
        const CorrectedValue& value = correction.values[k];
        const int row = static_cast<int>(k);
        const QString texts[] = {displayText(value.label),
                                 value.before
                                     ? withUnitBehind(plainNumber(*value.before, 4), value.unit)
                                     : QStringLiteral("–"),
                                 measuredText(value)};
        for (int column = 0; column < 3; ++column) {
            auto* const item = new QTableWidgetItem(texts[column]);
            item->setTextAlignment((column == 0 ? Qt::AlignLeft : Qt::AlignRight) |
                                   Qt::AlignVCenter);
            item->setToolTip(texts[column]);
            m_values->setItem(row, column, item);
        }
    }
    showCurve();
    fitRows();
}

// What the motors get at each throttle, below the numbers.
void CorrectionPane::showCurve()
{
    if (!m_correction->throttleCurve)
        return;
    const auto percent = [](double share) {
        return withUnitBehind(plainNumber(100.0 * share, 3), "%");
    };
    for (const auto& [throttle, duty] : *m_correction->throttleCurve) {
        const int row = m_values->rowCount();
        m_values->insertRow(row);
        const QString texts[] = {tr("duty at %1", "a throttle").arg(percent(throttle)),
                                 percent(throttle), percent(duty)};
        for (int column = 0; column < 3; ++column) {
            auto* const item = new QTableWidgetItem(texts[column]);
            item->setTextAlignment((column == 0 ? Qt::AlignLeft : Qt::AlignRight) |
                                   Qt::AlignVCenter);
            m_values->setItem(row, column, item);
        }
    }
}

// The words wrap as the columns are.
void CorrectionPane::fitRows()
{
    // Qt's own row height leaves out the cell's margins and cuts a label that just fits.
    const int room = std::max(m_values->columnWidth(0) - kCellMargin, 1);
    for (int row = 0; row < m_values->rowCount(); ++row)
        if (const QTableWidgetItem* const label = m_values->item(row, 0)) {
            const QRect words = m_values->fontMetrics().boundingRect(
                QRect(0, 0, room, QWIDGETSIZE_MAX), Qt::TextWordWrap, label->text());
            m_values->setRowHeight(row, words.height() + kCellMargin);
        }
    int height = m_values->horizontalHeader()->sizeHint().height() + 2 * m_values->frameWidth();
    for (int row = 0; row < m_values->rowCount(); ++row)
        height += m_values->rowHeight(row);
    m_values->setFixedHeight(height + 2);
}

void CorrectionPane::setStale(bool stale)
{
    m_isStale = stale;
    showAccept();
}

// Neither what the craft has already, nor what another measurement must bear out first.
void CorrectionPane::showAccept()
{
    m_accept->setEnabled(m_correction && !m_isStale && !isAccepted(*m_correction) &&
                         m_correction->mark.quality != Quality::Poor);
}

void CorrectionPane::addBelow(QWidget* widget)
{
    m_below->addWidget(widget);
}

QString CorrectionPane::text() const
{
    QStringList all;
    for (const QLabel* label : findChildren<QLabel*>())
        if (!label->isHidden() && !label->text().isEmpty())
            all << label->text();
    return all.join(u'\n');
}

}  // namespace stillbay::ui
