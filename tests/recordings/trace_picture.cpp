// SPDX-License-Identifier: MIT
#include "tests/recordings/trace_picture.h"

#include "tests/recordings/table_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <map>

namespace stillbay::test {
namespace {

constexpr int kWidth = 720, kHeight = 190;  // of a panel
constexpr int kLeft = 58, kRight = 12, kTop = 20, kBottom = 36;
constexpr std::array<const char*, 3> kColours{"#1f6f8b", "#b5541c", "#6b6b6b"};

struct Axis {
    double from = 0.0, to = 1.0;
    int first = 0, last = 1;  // pixels
    bool isLogarithmic = false;

    double scaled(double value) const { return isLogarithmic ? std::log10(value) : value; }
    double pixel(double value) const
    {
        return first +
               (scaled(value) - scaled(from)) / (scaled(to) - scaled(from)) * (last - first);
    }
};

// Round numbers, four to eight of them.
std::vector<double> ticksOf(const Axis& axis)
{
    std::vector<double> ticks;
    if (axis.isLogarithmic) {
        for (double tick = std::pow(10, std::ceil(std::log10(axis.from) - 1e-9));
             tick <= axis.to * (1 + 1e-9); tick *= 10)
            ticks.push_back(tick);
        return ticks;
    }
    double step = std::pow(10, std::floor(std::log10(axis.to - axis.from)));
    for (const double part : {0.5, 0.4, 0.5})
        if ((axis.to - axis.from) / step < 4)
            step *= part;
    for (double k = std::ceil(axis.from / step - 1e-9); k * step <= axis.to + 1e-9 * step; ++k)
        ticks.push_back(k * step);
    return ticks;
}

std::string tickText(double tick)
{
    if (tick != 0 && std::abs(tick) < 1e-3)
        return "1e" + std::to_string(std::lround(std::log10(std::abs(tick))));
    std::string text;
    int digits = 0;
    while (digits < 6 &&
           std::abs(tick * std::pow(10, digits) - std::round(tick * std::pow(10, digits))) > 1e-6)
        ++digits;
    appendNumber(text, tick, digits);
    return text;
}

Axis axisOver(const std::vector<Trace>& traces, std::vector<double> Trace::*values)
{
    Axis axis{.from = 1e300, .to = -1e300};
    for (const Trace& trace : traces) {
        axis.from = std::min(axis.from, std::ranges::min(trace.*values));
        axis.to = std::max(axis.to, std::ranges::max(trace.*values));
    }
    return axis;
}

class Picture {
public:
    void line(double x1, double y1, double x2, double y2, const char* colour)
    {
        m_text += "<path d=\"M";
        point(x1, y1);
        m_text += 'L';
        point(x2, y2);
        m_text += std::string("\" stroke=\"") + colour + "\"/>\n";
    }
    void words(double x, double y, const std::string& text, const char* anchor,
               const char* colour = "#333", const char* more = "")
    {
        m_text += "<text x=\"";
        appendNumber(m_text, x, 0);
        m_text += "\" y=\"";
        appendNumber(m_text, y, 0);
        m_text += std::string("\" text-anchor=\"") + anchor + "\" fill=\"" + colour + "\"" + more +
                  ">" + text + "</text>\n";
    }
    // Of each column the first, lowest, highest and last, where it has more points than that.
    void trace(const Trace& trace, const Axis& x, const Axis& y, const char* colour)
    {
        m_text += std::string("<path fill=\"none\" stroke=\"") + colour + "\" d=\"";
        std::map<int, std::vector<double>> columns;
        for (std::size_t k = 0; k < trace.x.size(); ++k)
            if (trace.x[k] >= x.from && trace.x[k] <= x.to)
                columns[static_cast<int>(x.pixel(trace.x[k]))].push_back(
                    y.pixel(std::clamp(trace.y[k], y.from, y.to)));
        bool isFirst = true;
        for (auto& [column, values] : columns) {
            if (values.size() > 4) {
                const auto [low, high] = std::ranges::minmax(values);
                values = {values.front(), low, high, values.back()};
            }
            for (const double value : values) {
                m_text += isFirst ? 'M' : 'L';
                point(column, value);
                isFirst = false;
            }
        }
        m_text += "\"/>\n";
    }
    const std::string& text() const { return m_text; }

private:
    void point(double x, double y)
    {
        appendNumber(m_text, x, 0);
        m_text += ' ';
        appendNumber(m_text, y, 1);
    }

    std::string m_text;
};

void drawFrame(Picture& picture, const TracePanel& panel, const Axis& x, const Axis& y)
{
    for (const double tick : ticksOf(x)) {
        picture.line(x.pixel(tick), y.last, x.pixel(tick), y.first, "#e4e4e4");
        picture.words(x.pixel(tick), y.first + 14, tickText(tick), "middle");
    }
    for (const double tick : ticksOf(y)) {
        picture.line(x.first, y.pixel(tick), x.last, y.pixel(tick), "#e4e4e4");
        picture.words(x.first - 6, y.pixel(tick) + 4, tickText(tick), "end");
    }
    picture.words((x.first + x.last) / 2.0, y.first + 29, panel.x, "middle");
    const double middle = (y.first + y.last) / 2.0;
    std::string turn = " transform=\"rotate(-90 14 ";
    appendNumber(turn, middle, 0);
    picture.words(14, middle, panel.y, "middle", "#333", (turn + ")\"").c_str());
}

void drawPanel(Picture& picture, const TracePanel& panel, int top)
{
    Axis x = axisOver(panel.traces, &Trace::x), y = axisOver(panel.traces, &Trace::y);
    x.first = kLeft;
    x.last = kWidth - kRight;
    y.first = top + kHeight - kBottom;
    y.last = top + kTop;
    y.isLogarithmic = panel.isLogarithmic;
    if (!panel.isLogarithmic) {
        const double room = 0.06 * (y.to - y.from);
        y.from -= y.from == 0.0 ? 0.0 : room;
        y.to += room;
    }
    drawFrame(picture, panel, x, y);
    double named = x.first;
    for (std::size_t k = 0; k < panel.traces.size(); ++k) {
        const char* colour = kColours[k % kColours.size()];
        picture.trace(panel.traces[k], x, y, colour);
        picture.words(named, top + 13, panel.traces[k].name, "start", colour);
        named += 16 + 6.5 * static_cast<double>(panel.traces[k].name.size());
    }
    for (const TraceMark& mark : panel.marks) {
        for (const double edge : {mark.from, mark.to})
            picture.line(x.pixel(edge), y.last, x.pixel(edge), y.first, "#888");
        picture.words((x.pixel(mark.from) + x.pixel(mark.to)) / 2, y.last + 13, mark.text,
                      "middle");
    }
}

}  // namespace

std::string tracePicture(const std::vector<TracePanel>& panels)
{
    Picture picture;
    for (std::size_t k = 0; k < panels.size(); ++k)
        drawPanel(picture, panels[k], static_cast<int>(k) * kHeight);
    const std::string size = std::to_string(kWidth) + "\" height=\"" +
                             std::to_string(kHeight * static_cast<int>(panels.size()));
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + size +
           "\" font-family=\"sans-serif\" font-size=\"11\">\n<rect width=\"" + size +
           "\" fill=\"#fff\"/>\n" + picture.text() + "</svg>\n";
}

}  // namespace stillbay::test
