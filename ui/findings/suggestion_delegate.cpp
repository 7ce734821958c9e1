// SPDX-License-Identifier: MIT
#include "ui/findings/suggestion_delegate.h"

#include "ui/widgets/colours.h"

#include <QApplication>
#include <QPainter>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr int kMargin = 4, kGap = 2, kBarHeight = 6;

struct Inks {
    QColor text, quiet, problem, bar, rest;
};

Inks inksOf(const QStyleOptionViewItem& option, bool stale)
{
    const QPalette& palette = option.palette;
    const auto group = stale ? QPalette::Disabled : QPalette::Active;
    if (option.state & QStyle::State_Selected) {
        const QColor ink = palette.color(group, QPalette::HighlightedText);
        return {ink, ink, ink, ink, mixed(palette.color(group, QPalette::Highlight), ink, 0.25)};
    }
    const QColor text = palette.color(group, QPalette::Text);
    const QColor base = QApplication::palette().color(QPalette::Window);
    const QColor blue = isDark(palette) ? QColor(0x56, 0xB4, 0xE9) : QColor(0x00, 0x72, 0xB2);
    if (stale)
        return {text, text, text, mixed(text, base, 0.4), mixed(base, text, 0.15)};
    return {text, quietColour(palette), problemColour(palette), blue, mixed(base, text, 0.15)};
}

}  // namespace

QSize SuggestionDelegate::sizeHint(const QStyleOptionViewItem& option,
                                   const QModelIndex& index) const
{
    const int lines = index.data(DangerRole).toString().isEmpty() ? 2 : 3;
    return {100, 2 * kMargin + lines * option.fontMetrics.height() + (lines - 1) * kGap};
}

void SuggestionDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                               const QModelIndex& index) const
{
    QStyleOptionViewItem background = option;
    initStyleOption(&background, index);
    background.text.clear();
    const QWidget* const widget = option.widget;
    const QStyle* const style = widget ? widget->style() : QApplication::style();
    style->drawControl(QStyle::CE_ItemViewItem, &background, painter, widget);

    painter->save();
    painter->setFont(option.font);
    painter->setRenderHint(QPainter::Antialiasing);
    const Inks inks = inksOf(option, m_stale);
    const QFontMetrics& metrics = option.fontMetrics;
    const int height = metrics.height();
    QRect line = option.rect.adjusted(kMargin, kMargin, -kMargin, 0);
    line.setHeight(height);
    const auto write = [&](const QRect& room, Qt::Alignment alignment, const QColor& ink,
                           const QString& text) {
        painter->setPen(ink);
        painter->drawText(room, static_cast<int>(alignment | Qt::AlignVCenter),
                          metrics.elidedText(text, Qt::ElideRight, room.width()));
    };

    const QString gain = index.data(GainRole).toString();
    const int gainWidth = metrics.horizontalAdvance(gain);
    write(line, Qt::AlignRight, inks.text, gain);
    write(line.adjusted(0, 0, -gainWidth - 2 * kMargin, 0), Qt::AlignLeft, inks.text,
          index.data(Qt::DisplayRole).toString());

    line.translate(0, height + kGap);
    const QString numbers = index.data(NumbersRole).toString();
    const int numbersWidth = metrics.horizontalAdvance(numbers);
    write(line, Qt::AlignRight, inks.quiet, numbers);
    QRectF bar = line.adjusted(0, (height - kBarHeight) / 2, -numbersWidth - 3 * kMargin, 0);
    bar.setHeight(kBarHeight);
    painter->fillRect(bar, inks.rest);
    bar.setWidth(bar.width() * std::clamp(index.data(ShareRole).toDouble(), 0.0, 1.0));
    painter->fillRect(bar, inks.bar);

    if (const QString danger = index.data(DangerRole).toString(); !danger.isEmpty()) {
        line.translate(0, height + kGap);
        write(line, Qt::AlignLeft, inks.problem, danger);
    }
    painter->restore();
}

}  // namespace stillbay::ui
