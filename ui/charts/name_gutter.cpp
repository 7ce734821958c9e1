// SPDX-License-Identifier: MIT
#include "ui/charts/name_gutter.h"

#include "ui/charts/spread.h"

#include <QFontMetricsF>
#include <QPainter>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kNameTie = 16.0;     // between a height and its name
constexpr double kNamePadding = 4.0;  // right of a name
constexpr double kNameGap = 1.0;      // between names

}  // namespace

NameGutter::NameGutter(const QString& title, double z) : QwtPlotItem(QwtText(title))
{
    setZ(z);
    setRenderHint(QwtPlotItem::RenderAntialiased);
}

void NameGutter::setColours(const QColor& text, const QColor& quiet, const QColor& ground)
{
    m_text = text;
    m_quiet = quiet;
    m_ground = ground;
}

QFont NameGutter::fontOf(const HeightName& name) const
{
    QFont font = m_font;
    font.setBold(name.strong);
    return font;
}

double NameGutter::wishedWidth() const
{
    double widest = 0.0;
    for (const HeightName& name : m_names)
        widest = std::max(widest, QFontMetricsF(fontOf(name)).horizontalAdvance(name.text));
    return kNameTie + std::ceil(widest) + kNamePadding + 2.0;
}

void NameGutter::draw(QPainter* painter, const QwtScaleMap&, const QwtScaleMap& yMap,
                      const QRectF& canvas) const
{
    const double left = canvas.right() - m_width;
    const double height = QFontMetricsF(m_font).height();
    struct Seen {
        const HeightName* name;
        double y;
    };
    std::vector<Seen> seen;
    for (const HeightName& name : m_names)
        if (const double y = yMap.transform(name.y);
            std::isfinite(y) && y >= canvas.top() - 1.0 && y <= canvas.bottom() + 1.0)
            seen.push_back({&name, y});
    std::stable_sort(seen.begin(), seen.end(),
                     [](const Seen& a, const Seen& b) { return a.y < b.y; });
    std::vector<double> wished;
    for (const Seen& one : seen)
        wished.push_back(one.y);
    const std::vector<double> heights(seen.size(), height);
    const std::vector<double> places =
        spread(wished, heights, kNameGap, canvas.top() + 1.0, canvas.bottom() - 1.0);

    painter->save();
    painter->fillRect(QRectF(left, canvas.top(), m_width, canvas.height()), m_ground);
    m_labelRects.clear();
    for (std::size_t k = 0; k < seen.size(); ++k) {
        const QRectF label(left + kNameTie, places[k] - height / 2.0,
                           m_width - kNameTie - kNamePadding, height);
        m_labelRects.push_back(label);
        painter->setPen(QPen(m_quiet, 1.0));
        painter->drawLine(QPointF(left, seen[k].y), QPointF(label.left() - 3.0, places[k]));
        const QFont font = fontOf(*seen[k].name);
        painter->setFont(font);
        painter->setPen(m_text);
        painter->drawText(label, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine,
                          QFontMetricsF(font).elidedText(seen[k].name->text, Qt::ElideRight,
                                                         label.width() + 1.0));
    }
    painter->restore();
}

}  // namespace stillbay::ui
