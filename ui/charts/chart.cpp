// SPDX-License-Identifier: MIT
#include "ui/charts/chart.h"

#include "ui/charts/chart_hand.h"
#include "ui/charts/chart_menu.h"
#include "ui/charts/curve_ink.h"
#include "ui/charts/hair_line.h"
#include "ui/charts/mark_lane.h"
#include "ui/charts/scales.h"

#include <QEvent>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QPainter>
#include <qwt_axis.h>
#include <qwt_legend.h>
#include <qwt_painter.h>
#include <qwt_picker_machine.h>
#include <qwt_plot_canvas.h>
#include <qwt_plot_grid.h>
#include <qwt_plot_layout.h>
#include <qwt_plot_picker.h>
#include <qwt_scale_draw.h>
#include <qwt_scale_engine.h>
#include <qwt_scale_map.h>
#include <qwt_scale_widget.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr double kMostZoom = 500.0;     // deeper, there is nothing between two points
constexpr int kMostTicksUp = 7;         // labelled ones
constexpr double kMostForLabels = 0.4;  // of the canvas
constexpr double kFromEdge = 3.0;       // of the canvas
constexpr double kFromPointer = 4.0;    // of the read-out
const QPointF kPointer(20.0, 4.0);  // half of what the read-out should not cover of the cross hairs
constexpr int kRows = 5, kColumns = 6;  // of places for the read-out
constexpr double kStepsAcross = 200.0, kFarStepsAcross = 20.0;

}  // namespace

/// Cross hairs and a line of text that follow the pointer.
class Chart::Readout final : public QwtPlotPicker {
public:
    explicit Readout(Chart& chart)
        : QwtPlotPicker(QwtAxis::XBottom, QwtAxis::YLeft, CrossRubberBand, AlwaysOn,
                        chart.canvas()),
          m_chart(chart)
    {
        setStateMachine(new QwtPickerTrackerMachine);
    }

    QRect trackerRect(const QFont& font) const override
    {
        const QPoint pointer = trackerPosition();
        if (pointer.x() < 0 || pointer.y() < 0)
            return {};
        const QwtText text = trackerText(pointer);
        if (text.isEmpty())
            return {};
        QSizeF size = text.textSize(font);
        const double most = pickArea().boundingRect().width() - 2.0 * kFromEdge;
        if (size.width() > most)  // it is broken into more lines
            size = {most, text.heightForWidth(most, font)};
        return m_chart
            .placeReadout(QSizeF(std::ceil(size.width()), std::ceil(size.height())), pointer)
            .toRect();
    }

protected:
    QwtText trackerTextF(const QPointF& place) const override
    {
        QwtText text(m_chart.readout(place), QwtText::PlainText);
        const QPalette palette = m_chart.palette();
        text.setColor(palette.color(QPalette::ToolTipText));
        text.setBackgroundBrush(palette.color(QPalette::ToolTipBase));
        text.setBorderPen(QPen(palette.color(QPalette::Mid)));
        text.setBorderRadius(3.0);
        text.setRenderFlags(Qt::AlignLeft | Qt::AlignVCenter | Qt::TextWordWrap);
        return text;
    }

private:
    Chart& m_chart;
};

/// The focus is a frame that leaves the drawing as it is; some styles would fill it.
class Chart::Canvas final : public QwtPlotCanvas {
public:
    explicit Canvas(Chart& chart) : QwtPlotCanvas(&chart)
    {
        setFrameStyle(QFrame::NoFrame);
        setFocusPolicy(Qt::StrongFocus);
        setFocusIndicator(QwtPlotCanvas::CanvasFocusIndicator);
        setCursor(Qt::CrossCursor);
    }

protected:
    void drawFocusIndicator(QPainter* painter) override
    {
        constexpr double kWidth = 2.0;
        painter->save();
        painter->setPen(QPen(palette().color(QPalette::Highlight), kWidth, Qt::SolidLine,
                             Qt::SquareCap, Qt::MiterJoin));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(
            QRectF(rect()).adjusted(0.5 * kWidth, 0.5 * kWidth, -0.5 * kWidth, -0.5 * kWidth));
        painter->restore();
    }
};

Chart::Chart(const QString& name, QWidget* parent)
    : QwtPlot(parent), m_grid(new QwtPlotGrid), m_hair(new HairLine)
{
    // Qwt's shortcuts would draw dashed curves solid and, on fine screens, in stairs.
    QwtPainter::setPolylineSplitting(false);
    QwtPainter::setRoundingAlignment(false);

    setAutoReplot(false);
    setCanvas(new Canvas(*this));
    setName(name);
    plotLayout()->setAlignCanvasToScales(true);
    m_grid->attach(this);
    m_hair->attach(this);
    m_readout = new Readout(*this);  // owned by the canvas
    m_menu = new ChartMenu(*this);
    new ChartHand(*this);  // owned by the chart
    setMinimumHeight(130);
}

QSize Chart::sizeHint() const
{
    return {500, 240};
}

QSize Chart::minimumSizeHint() const
{
    return {240, 130};
}

void Chart::popupMenu(const QPoint& globalPlace)
{
    m_menu->popup(globalPlace);
}

void Chart::setStale(bool stale)
{
    if (m_stale == stale)
        return;
    m_stale = stale;
    applyTheme();
}

QFont Chart::smallFont() const
{
    QFont small = font();
    small.setPixelSize(std::max(1, qRound(0.9 * QFontInfo(small).pixelSize())));
    return small;
}

void Chart::applyTheme()
{
    m_ready = true;
    const ChartTheme theme = chartTheme(palette(), m_stale);
    setCanvasBackground(theme.canvas);
    m_grid->setPen(QPen(theme.grid, 1.0));
    m_readout->setRubberBandPen(QPen(theme.quiet, 1.0));
    if (m_axisFont != smallFont())
        applyFont();
    m_hair->setLook(smallFont(), theme.cursor, theme.canvas);
    restyle(theme);
    labelCursor();
    replot();
}

void Chart::applyFont()
{
    m_axisFont = smallFont();
    for (const int axis : {QwtAxis::XBottom, QwtAxis::YLeft, QwtAxis::YRight}) {
        setAxisFont(axis, m_axisFont);
        QwtText title = axisTitle(axis);
        title.setFont(m_axisFont);
        setAxisTitle(axis, title);
    }
    if (QWidget* const shown = legend())
        shown->setFont(m_axisFont);
    // Room for the usual labels, so that the curves do not hop when a decade comes or goes.
    const QFontMetrics metrics(m_axisFont);
    const int up = metrics.height() / 2 + 1, aside = metrics.horizontalAdvance(u'0') * 2;
    axisWidget(QwtAxis::YLeft)->setMinBorderDist(up, up);
    axisWidget(QwtAxis::YRight)->setMinBorderDist(up, up);
    axisWidget(QwtAxis::XBottom)->setMinBorderDist(aside, aside);
    QwtScaleDraw* const scale = axisScaleDraw(QwtAxis::YLeft);
    scale->setMinimumExtent(scale->maxTickLength() + scale->spacing() +
                            QFontMetricsF(m_axisFont).horizontalAdvance(QStringLiteral("0.0001")));
}

void Chart::setName(const QString& name)
{
    setAccessibleName(name);
    canvas()->setAccessibleName(tr("%1, drawing area").arg(name));
    emit named(name);
}

void Chart::setSummary(const QString& summary)
{
    m_summary = summary;
    setAccessibleDescription(summary);
}

void Chart::changeEvent(QEvent* event)
{
    QwtPlot::changeEvent(event);
    if (m_ready && (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange))
        applyTheme();
}

Chart::Axis& Chart::axisOf(int axis)
{
    return m_axes[axis == QwtAxis::XBottom ? 0 : 1];
}

const Chart::Axis& Chart::axisOf(int axis) const
{
    return m_axes[axis == QwtAxis::XBottom ? 0 : 1];
}

void Chart::setRange(int axis, double from, double to)
{
    axisOf(axis).whole = Span{from, to};
    showAxis(axis);
}

Span Chart::shown(int axis) const
{
    const QwtScaleDiv& division = axisScaleDiv(axis);
    return {division.lowerBound(), division.upperBound()};
}

void Chart::showAxis(int axis)
{
    const Axis& state = axisOf(axis);
    if (!state.whole)
        return;
    const Span span = state.zoomed.value_or(*state.whole);
    const bool isLog = dynamic_cast<const QwtLogScaleEngine*>(axisScaleEngine(axis)) != nullptr;
    const int most = axis == QwtAxis::XBottom ? m_mostTicksAcross : kMostTicksUp;
    setAxisScaleDiv(axis, isLog ? logDivision(span.from, span.to, most)
                                : evenDivision(span.from, span.to, most));
}

void Chart::showZoom()
{
    showAxis(QwtAxis::XBottom);
    showAxis(QwtAxis::YLeft);
    updateAxes();
    viewChanged();
    labelCursor();
    replot();
    emit zoomChanged(isZoomed());
}

bool Chart::isZoomed() const
{
    return std::any_of(m_axes.begin(), m_axes.end(),
                       [](const Axis& axis) { return axis.zoomed.has_value(); });
}

// Pixels where the axis has its smaller and larger value; never beyond the whole range.
void Chart::zoomAxis(int axis, double fromPixel, double toPixel)
{
    Axis& state = axisOf(axis);
    if (!state.whole)
        return;
    const QwtScaleMap map = canvasMap(axis);
    const double wholeFrom = map.transform(state.whole->from);
    const double wholeTo = map.transform(state.whole->to);
    const double share = (toPixel - fromPixel) / (wholeTo - wholeFrom);
    if (!(share * kMostZoom > 1.0))
        return;
    const double from = std::max(map.invTransform(fromPixel), state.whole->from);
    const double to = std::min(map.invTransform(toPixel), state.whole->to);
    constexpr double kRounding = 1e-9;  // zoomed in and out again is not zoomed
    if (share >= 1.0 - kRounding || !(from < to))
        state.zoomed.reset();
    else
        state.zoomed = Span{from, to};
}

void Chart::zoomTo(const QRectF& area)
{
    zoomAxis(QwtAxis::XBottom, area.left(), area.right());
    zoomAxis(QwtAxis::YLeft, area.bottom(), area.top());
    showZoom();
}

void Chart::zoomBy(double across, double upAndDown, const QPointF& place)
{
    const auto zoom = [&](int axis, double factor, double fixed) {
        if (factor == 1.0)
            return;
        const QwtScaleMap map = canvasMap(axis);
        zoomAxis(axis, fixed + factor * (map.p1() - fixed), fixed + factor * (map.p2() - fixed));
    };
    zoom(QwtAxis::XBottom, across, place.x());
    zoom(QwtAxis::YLeft, upAndDown, place.y());
    showZoom();
}

void Chart::zoomAtCursor(double factor)
{
    const QRectF area(canvas()->rect());
    const double cursor = canvasMap(QwtAxis::XBottom).transform(m_hair->x());
    const bool isSeen = m_hair->isVisible() && cursor >= area.left() && cursor <= area.right();
    zoomBy(factor, 1.0, QPointF(isSeen ? cursor : area.center().x(), area.center().y()));
}

void Chart::panAxis(int axis, double pixels)
{
    Axis& state = axisOf(axis);
    if (!state.zoomed)
        return;
    const QwtScaleMap map = canvasMap(axis);
    const auto room = std::minmax(
        {map.p1() - map.transform(state.whole->from), map.p2() - map.transform(state.whole->to)});
    const double shift = std::clamp(pixels, std::min(room.first, 0.0), std::max(room.second, 0.0));
    state.zoomed = Span{map.invTransform(map.p1() - shift), map.invTransform(map.p2() - shift)};
}

void Chart::panBy(const QPointF& pixels)
{
    if (!isZoomed())
        return;
    panAxis(QwtAxis::XBottom, pixels.x());
    panAxis(QwtAxis::YLeft, pixels.y());
    showZoom();
}

void Chart::resetZoom()
{
    for (Axis& axis : m_axes)
        axis.zoomed.reset();
    showZoom();
}

double Chart::topBelowLabels(double low, double value, double labels_px) const
{
    const double share = std::min(labels_px / std::max(canvas()->height(), 1), kMostForLabels);
    return low * std::pow(value / low, 1.0 / (1.0 - share));
}

// Beside the pointer, or elsewhere on the canvas: where no curve peaks.
QRectF Chart::placeReadout(const QSizeF& size, const QPointF& pointer) const
{
    const QRectF room =
        QRectF(canvas()->rect()).adjusted(kFromEdge, kFromEdge, -kFromEdge, -kFromEdge);
    CurveInk ink(*this, canvasMap(QwtAxis::XBottom), canvasMap(QwtAxis::YLeft));
    for (const QwtPlotItem* const item : itemList())
        if (const auto* const lane = dynamic_cast<const MarkLane*>(item))
            for (const QRectF& label : lane->labelRects())
                ink.add(label);
    if (m_hair->isVisible())
        ink.add(m_hair->labelRect());
    ink.add(QRectF(pointer - kPointer, pointer + kPointer));
    std::vector<QRectF> boxes;
    const auto offer = [&](double left, double top) {
        boxes.emplace_back(
            QPointF(
                std::clamp(left, room.left(), std::max(room.left(), room.right() - size.width())),
                std::clamp(top, room.top(), std::max(room.top(), room.bottom() - size.height()))),
            size);
    };
    const double right = pointer.x() + 2.0 * kFromPointer,
                 left = pointer.x() - 2.0 * kFromPointer - size.width();
    for (const double top :
         {pointer.y() - 2.0 * kFromPointer - size.height(), pointer.y() + 2.0 * kFromPointer})
        for (const double side : {right, left})
            offer(side, top);
    const double lowest = std::max(room.top(), room.bottom() - size.height());
    const double across = std::max(0.0, room.width() - size.width());
    for (int row = 0; row < kRows; ++row)
        for (int column = 0; column < kColumns; ++column)
            offer(room.left() + across * column / (kColumns - 1),
                  std::lerp(room.top(), lowest, static_cast<double>(row) / (kRows - 1)));
    return ink.clearest(boxes);
}

QRectF Chart::readoutRect() const
{
    return m_readout->trackerRect(m_readout->trackerFont());
}

QString Chart::readoutAt(double x) const
{
    const Span up = shown(QwtAxis::YLeft);
    return readout(QPointF(x, up.from));
}

QString Chart::cursorLabel(double x) const
{
    return readoutAt(x);
}

bool Chart::dragCursorTo(const QPointF&)
{
    return false;
}

void Chart::stepCursor(Step step)
{
    const QwtScaleMap map = canvasMap(QwtAxis::XBottom);
    const double width = map.pDist();
    const double now = m_hair->isVisible() ? map.transform(m_hair->x()) : map.p1() + width / 2.0;
    const bool isFar = step == Step::FarBack || step == Step::FarOn;
    const double stride = width / (isFar ? kFarStepsAcross : kStepsAcross);
    const double wanted = step == Step::First                           ? map.p1()
                          : step == Step::Last                          ? map.p2()
                          : step == Step::Back || step == Step::FarBack ? now - stride
                                                                        : now + stride;
    const double inside = std::clamp(wanted, map.p1(), map.p2());
    panBy({inside - wanted, 0.0});  // what is zoomed into follows the cursor over its edge
    const Span span = shown(QwtAxis::XBottom);
    placeCursor(std::clamp(map.invTransform(wanted), span.from, span.to));
}

void Chart::hideCursor()
{
    m_hair->setVisible(false);
    labelCursor();
    replot();
}

void Chart::placeCursor(double x)
{
    m_hair->place(x, {});
    m_hair->setVisible(true);
    labelCursor();
    replot();
}

// The canvas speaks of the cursor while there is one, else of the whole chart.
void Chart::labelCursor()
{
    const bool isSeen = m_hair->isVisible();
    if (isSeen)
        m_hair->place(m_hair->x(), cursorLabel(m_hair->x()));
    const QString spoken = isSeen ? readoutAt(m_hair->x()) : m_summary;
    if (canvas()->accessibleDescription() != spoken)
        canvas()->setAccessibleDescription(spoken);
}

}  // namespace stillbay::ui
