// SPDX-License-Identifier: MIT
#include "ui/map/map_chart.h"

#include "ui/charts/scales.h"
#include "ui/map/map_item.h"
#include "ui/map/map_labels.h"
#include "ui/map/map_text.h"
#include "ui/widgets/colours.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <qwt_axis.h>
#include <qwt_legend.h>
#include <qwt_plot_marker.h>
#include <qwt_scale_map.h>
#include <qwt_scale_widget.h>
#include <qwt_symbol.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace stillbay::ui {
namespace {

constexpr double kKeptZ = 31.0, kPresentZ = 32.0, kBestZ = 33.0, kCursorZ = 40.0;
constexpr int kColourBarWidth = 12;
constexpr int kFar = 5;                   // nodes that Shift with an arrow goes
constexpr double kLeastTolerances = 1.5;  // of the colours, where the wobble is the same all over

QwtPlotMarker* makeMarker(QwtPlot* plot, double z)
{
    auto* const marker = new QwtPlotMarker;
    marker->setZ(z);
    marker->setVisible(false);
    marker->attach(plot);
    return marker;
}

RefusedColours refusedColours(const ChartTheme& theme)
{
    return {mixed(theme.canvas, theme.text, 0.06), theme.quiet};
}

}  // namespace

MapChart::MapChart(QWidget* parent)
    : Chart(mapTitle(Variable::FreeLength, Variable::Stretch), parent),
      m_item(new MapItem(tr("Wobble over both design variables"))),
      m_labels(new MapLabels(*m_item)),
      m_present(makeMarker(this, kPresentZ)),
      m_best(makeMarker(this, kBestZ)),
      m_cursor(makeMarker(this, kCursorZ))
{
    m_item->attach(this);
    m_labels->attach(this);
    m_present->setLineStyle(QwtPlotMarker::Cross);
    auto* const legend = new QwtLegend;
    legend->setAccessibleName(tr("Why parts of the map are hatched"));
    insertLegend(legend, QwtPlot::TopLegend);
    setAxisScaleDraw(QwtAxis::XBottom, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::YLeft, new PlainScaleDraw);
    setAxisScaleDraw(QwtAxis::YRight, new PlainScaleDraw);
    setLogScale(*this, QwtAxis::YRight);
    setAxisVisible(QwtAxis::YRight);
    axisWidget(QwtAxis::YRight)->setColorBarEnabled(true);
    axisWidget(QwtAxis::YRight)->setColorBarWidth(kColourBarWidth);
    canvas()->installEventFilter(this);
    applyTheme();
}

void MapChart::setAxes(const MapAxis& x, const MapAxis& y)
{
    if (const QString title = mapTitle(x.variable, y.variable); title != name())
        setName(title);
    m_map = {x, y, {}};
    m_at.reset();
    m_labels->forgetSides();
    point({});
    for (const auto& [place, axis] : {std::pair(QwtAxis::XBottom, x), {QwtAxis::YLeft, y}}) {
        const double rim = 0.5 * (axis.to - axis.from) / static_cast<double>(axis.count - 1);
        setRange(place, shownValue(axis.variable, axis.from - rim),
                 shownValue(axis.variable, axis.to + rim));
    }
    resetZoom();
    setMap(m_map, m_shows, m_limits);
}

void MapChart::setMap(const DesignMap& map, MapShows shows, const Limits& limits)
{
    m_map = map;
    m_shows = shows;
    m_limits = limits;
    std::vector<LevelLine> lines;
    const MapField field = fieldOfMap(map, shows);
    if (const auto range = field.range_px()) {
        double level = ladderBelow(range->first);
        while (level < range->second) {
            lines.push_back({level, {}});
            level = ladderAbove(1.01 * level);
        }
    }
    lines.push_back({limits.faint_px, tr("faint %1 px").arg(plainNumber(limits.faint_px, 3))});
    lines.push_back({limits.bad_px, tr("bad %1 px").arg(plainNumber(limits.bad_px, 3))});
    m_item->setField(field, std::move(lines));
    if (m_at && (m_at->i >= map.x.count || m_at->j >= map.y.count))
        m_at.reset();
    fitTitles();
    placeReasons();
    placeBest();
    describe();
    applyTheme();
}

void MapChart::placeReasons()
{
    for (ReasonItem* item : m_reasons) {
        item->detach();
        delete item;
    }
    m_reasons.clear();
    std::set<Constraint> met;
    for (const Evaluation& verdict : m_map.cells)
        if (verdict.violated)
            met.insert(*verdict.violated);
    for (const Constraint reason : met) {
        m_reasons.push_back(new ReasonItem(reason));
        m_reasons.back()->setColours(refusedColours(chartTheme(palette(), isStale())));
        m_reasons.back()->attach(this);
    }
    legend()->setVisible(!met.empty());
}

void MapChart::placeBest()
{
    const auto best = bestOn(m_map, m_shows);
    m_best->setVisible(best.has_value());
    if (best)
        m_best->setValue(shownValue(m_map.x.variable, m_map.x.at(*best / m_map.y.count)),
                         shownValue(m_map.y.variable, m_map.y.at(*best % m_map.y.count)));
}

void MapChart::setMarks(const MapMark& present, const std::vector<MapMark>& kept)
{
    m_presentMark = present;
    m_present->setValue(shownValue(m_map.x.variable, present.x),
                        shownValue(m_map.y.variable, present.y));
    m_present->setVisible(true);
    for (QwtPlotMarker* marker : m_kept) {
        marker->detach();
        delete marker;
    }
    m_kept.clear();
    m_keptMarks = kept;
    for (const MapMark& mark : kept) {
        m_kept.push_back(makeMarker(this, kKeptZ));
        m_kept.back()->setValue(shownValue(m_map.x.variable, mark.x),
                                shownValue(m_map.y.variable, mark.y));
        m_kept.back()->setVisible(true);
    }
    applyTheme();
}

// What is too long for its axis is cut; the table and the chart's own words have the whole.
void MapChart::fitTitles()
{
    const QFontMetrics metrics(smallFont());
    const auto fit = [&](int axis, const QString& title, int room) {
        const QString fitting = metrics.elidedText(title, Qt::ElideRight, std::max(room, 40));
        if (axisTitle(axis).text() == fitting)
            return;
        QwtText text(fitting, QwtText::PlainText);
        text.setFont(smallFont());
        setAxisTitle(axis, text);
    };
    const int across = canvas()->width(), up = canvas()->height();
    fit(QwtAxis::XBottom, axisTitleOf(m_map.x.variable), across);
    fit(QwtAxis::YLeft, axisTitleOf(m_map.y.variable), up);
    const QString wobble = wobbleTitleOf(m_shows);
    fit(QwtAxis::YRight, metrics.horizontalAdvance(wobble) > up ? tr("Wobble (px)") : wobble, up);
}

void MapChart::resizeEvent(QResizeEvent* event)
{
    Chart::resizeEvent(event);
    fitTitles();
}

// Tells once of each node.
void MapChart::point(std::optional<std::size_t> node)
{
    if (m_pointed == node)
        return;
    m_pointed = node;
    if (node)
        emit pointedAt(m_map.x.at(*node / m_map.y.count), m_map.y.at(*node % m_map.y.count));
    else
        emit pointedAway();
}

void MapChart::describe()
{
    setSummary(m_map.cells.empty() ? tr("Not computed yet.") : mapSentence(m_map, m_shows));
}

MapChart::Node MapChart::nearest(double shownX, double shownY) const
{
    const auto along = [](const MapAxis& axis, double shown) {
        const double share = (valueShown(axis.variable, shown) - axis.from) / (axis.to - axis.from);
        const auto last = static_cast<double>(axis.count - 1);
        return static_cast<std::size_t>(std::clamp(std::round(share * last), 0.0, last));
    };
    return {along(m_map.x, shownX), along(m_map.y, shownY)};
}

std::optional<std::size_t> MapChart::nodeAt(const QPointF& canvasPlace) const
{
    if (m_map.cells.empty() || !QRectF(canvas()->rect()).contains(canvasPlace))
        return std::nullopt;
    const Node node = nearest(canvasMap(QwtAxis::XBottom).invTransform(canvasPlace.x()),
                              canvasMap(QwtAxis::YLeft).invTransform(canvasPlace.y()));
    return node.i * m_map.y.count + node.j;
}

QPointF MapChart::canvasPlaceOf(std::size_t i, std::size_t j) const
{
    return {canvasMap(QwtAxis::XBottom).transform(shownValue(m_map.x.variable, m_map.x.at(i))),
            canvasMap(QwtAxis::YLeft).transform(shownValue(m_map.y.variable, m_map.y.at(j)))};
}

QString MapChart::readoutOf(std::size_t node) const
{
    QStringList lines{nodeText(m_map, node), verdictSentence(m_map.cells[node])};
    for (const MapMark& mark : m_keptMarks) {
        const Node at =
            nearest(shownValue(m_map.x.variable, mark.x), shownValue(m_map.y.variable, mark.y));
        if (at.i * m_map.y.count + at.j == node)
            lines << (mark.isElsewhere
                          ? tr("%1 (differs in more than this map sets)").arg(mark.name)
                          : mark.name);
    }
    return lines.join(u'\n');
}

QString MapChart::readout(const QPointF& place) const
{
    if (m_map.cells.empty())
        return {};
    const Node node = nearest(place.x(), place.y());
    return readoutOf(node.i * m_map.y.count + node.j);
}

bool MapChart::dragCursorTo(const QPointF& canvasPlace)
{
    const auto node = nodeAt(canvasPlace);
    m_isPressed = node.has_value();
    if (node) {
        m_at = Node{*node / m_map.y.count, *node % m_map.y.count};
        showCursor();
    }
    return true;
}

void MapChart::stepCursor(Step step)
{
    const int last = static_cast<int>(m_map.x.count);
    const std::array<int, 6> steps{-1, 1, -kFar, kFar, -last, last};
    moveCursor(steps.at(static_cast<std::size_t>(step)), 0);
}

void MapChart::moveCursor(int right, int up)
{
    if (m_map.cells.empty())
        return;
    if (!m_at) {  // it begins at the present tune
        m_at = nearest(m_present->xValue(), m_present->yValue());
    } else {
        const auto moved = [](std::size_t k, int by, std::size_t count) {
            return static_cast<std::size_t>(
                std::clamp(static_cast<int>(k) + by, 0, static_cast<int>(count) - 1));
        };
        m_at = Node{moved(m_at->i, right, m_map.x.count), moved(m_at->j, up, m_map.y.count)};
    }
    showCursor();
}

void MapChart::showCursor()
{
    m_cursor->setVisible(m_at.has_value());
    if (m_at)
        m_cursor->setValue(shownValue(m_map.x.variable, m_map.x.at(m_at->i)),
                           shownValue(m_map.y.variable, m_map.y.at(m_at->j)));
    applyTheme();
    if (!m_at)
        return;
    const std::size_t node = m_at->i * m_map.y.count + m_at->j;
    canvas()->setAccessibleDescription(readoutOf(node));
    point(node);
}

void MapChart::hideCursor()
{
    m_at.reset();
    m_isPressed = false;
    showCursor();
}

void MapChart::take()
{
    if (m_at && !isStale())
        emit tuneWanted(m_map.x.at(m_at->i), m_map.y.at(m_at->j));
}

bool MapChart::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::MouseButtonRelease && m_isPressed &&
        static_cast<QMouseEvent*>(event)->button() == Qt::LeftButton) {
        m_isPressed = false;
        take();
        m_at.reset();  // the present mark is there now
        showCursor();
    } else if (event->type() == QEvent::MouseMove) {
        point(nodeAt(static_cast<QMouseEvent*>(event)->position()));
    } else if (event->type() == QEvent::Leave) {
        point(m_at ? std::optional(m_at->i * m_map.y.count + m_at->j) : std::nullopt);
    } else if (event->type() == QEvent::KeyPress) {
        const auto& key = *static_cast<QKeyEvent*>(event);
        const int by = key.modifiers() & Qt::ShiftModifier ? kFar : 1;
        switch (key.key()) {
            case Qt::Key_Left:
                moveCursor(-by, 0);
                return true;
            case Qt::Key_Right:
                moveCursor(by, 0);
                return true;
            case Qt::Key_Down:
                moveCursor(0, -by);
                return true;
            case Qt::Key_Up:
                moveCursor(0, by);
                return true;
            case Qt::Key_Return:
            case Qt::Key_Enter:
                take();
                return true;
            default:
                break;
        }
    }
    return Chart::eventFilter(watched, event);
}

ChartTable MapChart::table() const
{
    ChartTable table{name(), {}};
    const auto column = [&](const char* key, const QString& heading, const auto& value) {
        ChartColumn filled{QString::fromLatin1(key), heading, {}};
        for (std::size_t node = 0; node < m_map.cells.size(); ++node)
            filled.values.push_back(value(node));
        table.columns.push_back(std::move(filled));
    };
    const auto figure = [&](const auto& of) {
        return [this, of](std::size_t node) {
            const Evaluation& verdict = m_map.cells[node];
            return verdict.feasible() ? of(verdict) : std::nan("");
        };
    };
    column(fieldOf(m_map.x.variable).key, axisTitleOf(m_map.x.variable), [this](std::size_t node) {
        return shownValue(m_map.x.variable, m_map.x.at(node / m_map.y.count));
    });
    column(fieldOf(m_map.y.variable).key, axisTitleOf(m_map.y.variable), [this](std::size_t node) {
        return shownValue(m_map.y.variable, m_map.y.at(node % m_map.y.count));
    });
    column("wobble_px", tr("Worst at the full pack (px)"),
           figure([](const Evaluation& v) { return v.cruise.full.worst_px; }));
    column("wobble_empty_px", tr("Worst at the empty pack (px)"),
           figure([](const Evaluation& v) { return v.cruise.empty.worst_px; }));
    column("mean_px", tr("Mean (px)"),
           figure([](const Evaluation& v) { return v.cruise.mean_px(); }));
    return table;
}

void MapChart::restyle(const ChartTheme& theme)
{
    QwtInterval range(m_limits.faint_px / 30.0, 3.0 * m_limits.bad_px);
    if (const auto found = m_item->field().range_px())
        range = {std::max(found->first, 1e-6),
                 std::max(found->second, kLeastTolerances * std::max(found->first, 1e-6))};
    const WobbleScale scale(range, theme.wobble);
    const RefusedColours refused = refusedColours(theme);
    m_item->setLook(scale, refused, theme.text, theme.canvas, smallFont());
    for (ReasonItem* item : m_reasons) {
        item->setColours(refused);
        item->itemChanged();
        item->legendChanged();
    }
    axisWidget(QwtAxis::YRight)->setColorMap(range, new WobbleColourMap(scale));
    setAxisScaleDiv(QwtAxis::YRight, logDivision(range.minValue(), range.maxValue(), 8));

    const auto dress = [&](QwtPlotMarker* marker, QwtSymbol::Style style, int size,
                           const QColor& fill) {
        marker->setSymbol(new QwtSymbol(style, fill, QPen(theme.text, 2.0), QSize(size, size)));
    };
    QPen guide(theme.cursor, 1.0, Qt::DashLine);
    guide.setCapStyle(Qt::FlatCap);
    m_present->setLinePen(guide);
    dress(m_present, QwtSymbol::Ellipse, 13, theme.canvas);
    dress(m_best, QwtSymbol::Star1, 15, theme.canvas);
    for (std::size_t k = 0; k < m_kept.size(); ++k)
        dress(m_kept[k], QwtSymbol::Diamond, 12,
              m_keptMarks[k].isElsewhere ? QColor(Qt::transparent) : theme.hover);
    dress(m_cursor, QwtSymbol::Cross, 17, theme.canvas);
    QColor ground = theme.canvas;
    ground.setAlpha(225);
    m_labels->setLook(smallFont(), theme.text, ground);
    placeLabels();
}

// Those that matter most first: what is looked at, the present tune, the best, the kept ones.
void MapChart::placeLabels()
{
    constexpr int kCursorKey = 0, kPresentKey = 1, kBestKey = 2, kFirstKeptKey = 3;
    std::vector<MapLabel> labels;
    const auto add = [&](const QwtPlotMarker& marker, int key, const QString& text, bool isNeeded) {
        labels.push_back({key, QPointF(marker.xValue(), marker.yValue()), text, isNeeded});
    };
    if (m_at)
        add(*m_cursor, kCursorKey, readoutOf(m_at->i * m_map.y.count + m_at->j), true);
    if (m_present->isVisible())
        add(*m_present, kPresentKey, tr("present tune"), true);
    if (const auto best = bestOn(m_map, m_shows))
        add(*m_best, kBestKey,
            tr("best: %1 px").arg(plainNumber(shownWobble_px(m_map.cells[*best], m_shows), 2)),
            true);
    for (std::size_t k = 0; k < m_kept.size(); ++k)
        add(*m_kept[k], kFirstKeptKey + static_cast<int>(k), m_keptMarks[k].name, false);
    std::vector<QPointF> marks;
    for (const MapLabel& label : labels)
        marks.push_back(label.place);
    m_item->setMarks(std::move(marks));
    m_labels->setLabels(std::move(labels));
}

}  // namespace stillbay::ui
