// SPDX-License-Identifier: MIT
#include "ui/tunes/tunes_strip.h"

#include "ui/tunes/tune_chip.h"
#include "ui/tunes/tunes_model.h"

#include <QKeyEvent>
#include <QToolButton>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr int kGap = 4;
constexpr int kMostChips = 16;  // more do not fit on any screen

}  // namespace

TunesStrip::TunesStrip(const TunesModel& model, QWidget* parent)
    : QWidget(parent), m_model(model), m_more(new QToolButton(this))
{
    m_more->setFocusPolicy(Qt::StrongFocus);
    m_more->setAutoRaise(true);
    m_more->setAccessibleName(tr("More kept tunes"));
    m_more->setToolTip(tr("Opens the list of all kept tunes."));
    m_more->hide();
    connect(m_more, &QToolButton::clicked, this, [this] {
        const auto firstHidden = std::find_if(
            m_chips.begin(), m_chips.end(), [](const TuneChip* chip) { return chip->isHidden(); });
        emit opened(static_cast<int>(firstHidden - m_chips.begin()));
    });
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&m_model, &TunesModel::modelReset, this, &TunesStrip::refresh);
    connect(&m_model, &TunesModel::dataChanged, this, &TunesStrip::refresh);
    refresh();
}

void TunesStrip::refresh()
{
    const auto wanted = static_cast<std::size_t>(std::min(m_model.rowCount(), kMostChips));
    while (m_chips.size() > wanted) {
        m_chips.back()->deleteLater();  // it may be the one that was pressed
        m_chips.back()->hide();
        m_chips.back()->setAccessibleName({});
        m_chips.pop_back();
    }
    while (m_chips.size() < wanted) {
        const int row = static_cast<int>(m_chips.size());
        auto* const chip = new TuneChip(this);
        chip->installEventFilter(this);
        connect(chip, &QAbstractButton::clicked, this, [this, row] { emit opened(row); });
        m_chips.push_back(chip);
    }
    for (int row = 0; row < static_cast<int>(m_chips.size()); ++row)
        m_chips[static_cast<std::size_t>(row)]->display(
            QString::fromStdString(m_model.tune(row).name), m_model.figuresText(row),
            m_model.kind(row), m_model.isLate());
    place();
}

QSize TunesStrip::sizeHint() const
{
    return {300, fontMetrics().height() + 6};
}

QSize TunesStrip::minimumSizeHint() const
{
    return {80, fontMetrics().height() + 6};
}

void TunesStrip::resizeEvent(QResizeEvent*)
{
    place();
}

void TunesStrip::place()
{
    const int all = m_model.rowCount();
    m_more->setText(tr("+%1").arg(all));  // the widest it gets
    const int reserve = m_more->sizeHint().width();
    int x = 0, shown = 0;
    for (TuneChip* chip : m_chips) {
        const QSize size = chip->sizeHint();
        const bool isLast = shown + 1 == all;
        if (x + size.width() + (isLast ? 0 : kGap + reserve) > width())
            break;
        chip->show();
        chip->setGeometry(x, (height() - size.height()) / 2, size.width(), size.height());
        x += size.width() + kGap;
        ++shown;
    }
    for (auto rest = m_chips.begin() + shown; rest != m_chips.end(); ++rest)
        (*rest)->hide();
    m_more->setVisible(shown < all);
    m_more->setText(tr("+%1").arg(all - shown));
    m_more->setGeometry(x, 0, m_more->sizeHint().width(), height());
}

// The arrow keys go along the chips.
bool TunesStrip::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        const auto at = std::find(m_chips.begin(), m_chips.end(), watched);
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            (*at)->click();
            return true;
        }
        if (key == Qt::Key_Left && at != m_chips.begin()) {
            (*std::prev(at))->setFocus();
            return true;
        }
        if (key == Qt::Key_Right && std::next(at) != m_chips.end() &&
            (*std::next(at))->isVisible()) {
            (*std::next(at))->setFocus();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

}  // namespace stillbay::ui
