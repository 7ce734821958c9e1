// SPDX-License-Identifier: MIT
#include "ui/compare/compare_choices.h"

#include "ui/charts/compared_curves.h"
#include "ui/widgets/labels.h"

#include <QEvent>
#include <QListWidget>
#include <QPainter>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr std::size_t kTickedAtFirst = 3;  // more at once would only clutter
constexpr QSize kLine(34, 14);
constexpr int kKey = Qt::UserRole;

}  // namespace

CompareChoices::CompareChoices(QWidget* parent)
    : QWidget(parent),
      m_list(new QListWidget),
      m_add(new QPushButton(tr("Add another file…"))),
      m_remove(new QPushButton(tr("Remove the file"))),
      m_problem(new ProblemLabel)
{
    m_list->setAccessibleName(tr("Crafts compared"));
    m_list->setToolTip(tr("The space bar ticks what is compared with the present tune."));
    m_list->setIconSize(kLine);
    m_list->setTextElideMode(Qt::ElideRight);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_add->setToolTip(tr("Compares the craft of another file, which is only read."));
    m_remove->setToolTip(tr("Takes the chosen file's craft out of the comparison."));
    for (QPushButton* button : {m_add, m_remove})
        button->setAutoDefault(true);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 8, 4, 8);
    layout->addWidget(new QuietLabel(
        tr("Ticked ones lie over the present tune in both charts; in the table ≠ marks what "
           "differs from it. Ctrl+K keeps the present tune.")));
    layout->addWidget(m_list, 1);
    layout->addWidget(m_add);
    layout->addWidget(m_remove);
    layout->addWidget(m_problem);
    connect(m_list, &QListWidget::itemChanged, this, [this](const QListWidgetItem* item) {
        set(item->data(kKey).toString(), item->checkState() == Qt::Checked);
        drawLines();
        emit changed();
    });
    connect(m_list, &QListWidget::currentRowChanged, this, &CompareChoices::showState);
    connect(m_add, &QPushButton::clicked, this, &CompareChoices::fileWanted);
    connect(m_remove, &QPushButton::clicked, this, [this] {
        if (const QListWidgetItem* item = m_list->currentItem())
            emit removeWanted(item->data(kKey).toString());
    });
    showState();
}

void CompareChoices::offer(const std::vector<ComparedCraft>& crafts)
{
    // A tune that is gone gives its dash and colour free; undo ticks it again.
    std::erase_if(m_places, [&](const auto& ticked) {
        return std::none_of(crafts.begin(), crafts.end(),
                            [&](const ComparedCraft& craft) { return craft.key == ticked.first; });
    });
    std::erase_if(m_met, [&](const QString& key) {
        return std::none_of(crafts.begin(), crafts.end(),
                            [&](const ComparedCraft& craft) { return craft.key == key; });
    });
    const QSignalBlocker quiet(m_list);
    while (m_list->count() > static_cast<int>(crafts.size()))
        delete m_list->takeItem(m_list->count() - 1);
    for (std::size_t k = 0; k < crafts.size(); ++k) {
        const ComparedCraft& craft = crafts[k];
        if (k > 0 && m_met.insert(craft.key).second && m_places.size() < kTickedAtFirst)
            set(craft.key, true);
        if (m_list->count() <= static_cast<int>(k))
            m_list->addItem(new QListWidgetItem);
        QListWidgetItem* const item = m_list->item(static_cast<int>(k));
        item->setText(craft.name);
        item->setToolTip(craft.meaning);
        item->setData(kKey, craft.key);
        item->setFlags(k == 0 ? Qt::ItemIsEnabled | Qt::ItemIsSelectable
                              : Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        if (k == 0)
            item->setData(Qt::CheckStateRole, QVariant());
        else
            item->setCheckState(m_places.contains(craft.key) ? Qt::Checked : Qt::Unchecked);
    }
    drawLines();
    showState();
}

std::optional<std::size_t> CompareChoices::placeOf(const QString& key) const
{
    const auto place = m_places.find(key);
    return place == m_places.end() ? std::nullopt : std::optional(place->second);
}

void CompareChoices::set(const QString& key, bool ticked)
{
    if (!ticked) {
        m_places.erase(key);
        return;
    }
    std::size_t place = 0;
    while (std::any_of(m_places.begin(), m_places.end(),
                       [&](const auto& other) { return other.second == place; }))
        ++place;
    m_places.try_emplace(key, place);
}

void CompareChoices::tick(const QString& key)
{
    m_met.insert(key);
    set(key, true);
}

void CompareChoices::forget()
{
    m_places.clear();
    m_met.clear();
}

// As each is drawn in the charts.
void CompareChoices::drawLines()
{
    const QSignalBlocker quiet(m_list);
    const ChartTheme theme = chartTheme(palette(), false);
    for (int row = 0; row < m_list->count(); ++row) {
        QListWidgetItem* const item = m_list->item(row);
        const auto place = placeOf(item->data(kKey).toString());
        QPixmap line(kLine * devicePixelRatioF());
        line.setDevicePixelRatio(devicePixelRatioF());
        line.fill(Qt::transparent);
        if (place || row == 0) {
            QPainter painter(&line);
            painter.setRenderHint(QPainter::Antialiasing);
            painter.setPen(place ? comparedPen(theme, *place) : QPen(theme.text, 2.6));
            painter.drawLine(QPointF(0.0, 0.5 * kLine.height()),
                             QPointF(kLine.width(), 0.5 * kLine.height()));
        }
        item->setIcon(QIcon(line));
    }
}

void CompareChoices::showState()
{
    const QListWidgetItem* const item = m_list->currentItem();
    m_remove->setEnabled(item && item->data(kKey).toString().startsWith(u"file "));
}

void CompareChoices::changeEvent(QEvent* event)
{
    if (event->type() == QEvent::PaletteChange)
        drawLines();
    QWidget::changeEvent(event);
}

}  // namespace stillbay::ui
