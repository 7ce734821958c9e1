// SPDX-License-Identifier: MIT
#include "ui/widgets/mark_labels.h"

#include <algorithm>
#include <array>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kRings = 4;  // of sides, each a label's height farther out
// Right above first, as a reader looks for it there.
constexpr std::array<std::array<int, 2>, 8> kSides{
    {{1, -1}, {1, 1}, {-1, -1}, {-1, 1}, {1, 0}, {-1, 0}, {0, -1}, {0, 1}}};
constexpr int kSideCount = static_cast<int>(kSides.size());

QRectF boxAt(int side, const QPointF& mark, double gap, const QSizeF& size)
{
    const auto& [right, down] = kSides[static_cast<std::size_t>(side % kSideCount)];
    const double out = gap + size.height() * (side / kSideCount);
    const QPointF middle = mark + QPointF(right * (out + 0.5 * size.width()),
                                          down * (out + (right == 0 ? 0.5 * size.height() : 0.0)));
    return {middle - QPointF(0.5 * size.width(), 0.5 * size.height()), size};
}

}  // namespace

void MarkLabels::begin(const QRectF& room, std::vector<QRectF> marks)
{
    m_room = room;
    m_taken = std::move(marks);
}

bool MarkLabels::isFree(const QRectF& box) const
{
    return m_room.contains(box) &&
           std::none_of(m_taken.begin(), m_taken.end(),
                        [&box](const QRectF& taken) { return taken.intersects(box); });
}

// kRings * kSideCount: none.
int MarkLabels::freeSide(int key, const QPointF& mark, double gap, const QSizeF& size) const
{
    const auto kept = m_sides.find(key);
    if (kept != m_sides.end() && isFree(boxAt(kept->second, mark, gap, size)))
        return kept->second;
    int side = 0;
    while (side < kRings * kSideCount && !isFree(boxAt(side, mark, gap, size)))
        ++side;
    return side;
}

MarkLabels::Spot MarkLabels::take(int key, int side, const QPointF& mark, double gap,
                                  const QSizeF& size)
{
    m_sides[key] = side;
    const QRectF box = boxAt(side, mark, gap, size);
    m_taken.push_back(box);
    return {box, side >= kSideCount};
}

MarkLabels::Spot MarkLabels::place(int key, const QPointF& mark, double gap, const QSizeF& size)
{
    const int side = freeSide(key, mark, gap, size);
    return take(key, side == kRings * kSideCount ? 0 : side, mark, gap, size);
}

std::optional<MarkLabels::Spot> MarkLabels::placeWhereFree(int key, const QPointF& mark, double gap,
                                                           const QSizeF& size)
{
    const int side = freeSide(key, mark, gap, size);
    if (side == kRings * kSideCount)
        return {};
    return take(key, side, mark, gap, size);
}

}  // namespace stillbay::ui
