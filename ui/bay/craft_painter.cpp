// SPDX-License-Identifier: MIT
#include "ui/bay/craft_painter.h"

#include "ui/bay/piece_look.h"

#include <QLineF>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

// The light comes from above the viewer's left shoulder, so that the sides of a box differ.
Vector3d lightOf(const Projection& projection)
{
    return (projection.towardsViewer() + 0.45 * projection.upwards() -
            0.25 * projection.rightwards())
        .normalized();
}

DrawnCorner drawn(const ViewFrame& frame, double pixelRatio, const Vector3d& p)
{
    const QPointF place = pixelRatio * frame.place(p);
    return {place.x(), place.y(), frame.projection.see(p).near};
}

// Lines of which only what is seen is drawn, dashes going on where the line comes out again.
class SeenLines {
public:
    SeenLines(QPainter& painter, const ViewFrame& frame, double pixelRatio,
              const DepthPicture& picture)
        : m_painter(painter), m_frame(frame), m_pixelRatio(pixelRatio), m_picture(picture)
    {
    }

    /// @param gone  how much of a longer line came before [logical pixels]
    /// @return with what this line adds
    double draw(const Vector3d& from, const Vector3d& to, const QPen& seen, const QPen& hidden,
                double gone = 0.0)
    {
        const DrawnCorner a = drawn(m_frame, m_pixelRatio, from),
                          b = drawn(m_frame, m_pixelRatio, to);
        const double length_px = std::hypot(b.x - a.x, b.y - a.y);
        const int steps = std::clamp(static_cast<int>(std::ceil(length_px)), 1, kMostSteps);
        const auto isHidden = [&](int step) {
            const double share = (step + 0.5) / steps;
            return m_picture.hides({std::lerp(a.x, b.x, share), std::lerp(a.y, b.y, share),
                                    std::lerp(a.near, b.near, share)});
        };
        const QLineF line(m_frame.place(from), m_frame.place(to));
        for (int first = 0; first < steps;) {
            const bool hides = isHidden(first);
            int last = first + 1;
            while (last < steps && isHidden(last) == hides)
                ++last;
            drawPiece(line, static_cast<double>(first) / steps, static_cast<double>(last) / steps,
                      hides ? hidden : seen, gone);
            first = last;
        }
        return gone + line.length();
    }

private:
    void drawPiece(const QLineF& line, double from, double to, QPen pen, double gone)
    {
        if (pen.style() == Qt::NoPen)
            return;
        if (pen.style() != Qt::SolidLine)
            pen.setDashOffset((gone + from * line.length()) / pen.widthF());
        m_painter.setPen(pen);
        m_painter.drawLine(line.pointAt(from), line.pointAt(to));
    }

    static constexpr int kMostSteps = 8000;

    QPainter& m_painter;
    const ViewFrame& m_frame;
    double m_pixelRatio;
    const DepthPicture& m_picture;
};

bool isSeen(const Edge& edge, const Vector3d& towardsViewer)
{
    const bool a = edge.normals[0].dot(towardsViewer) > 0.0,
               b = edge.normals[1].dot(towardsViewer) > 0.0;
    return edge.cut ? a && b : edge.round ? a != b : a || b;
}

void drawEdges(SeenLines& lines, const std::vector<Edge>& edges, const Vector3d& towardsViewer,
               const std::function<std::pair<QPen, QPen>(const Edge&)>& pensOf)
{
    for (const Edge& edge : edges)
        if (isSeen(edge, towardsViewer)) {
            const auto& [seen, hidden] = pensOf(edge);
            lines.draw(edge.from, edge.to, seen, hidden);
        }
}

}  // namespace

void paintFaces(DepthPicture& picture, const ViewFrame& frame, double pixelRatio,
                const CraftShape& shape, const std::function<QColor(const Face&)>& colourOf)
{
    struct Pane {
        const Face* face;
        double near;
    };
    std::vector<Pane> glass;
    std::vector<DrawnCorner> corners;
    const auto draw = [&](const Face& face, auto how) {
        corners.clear();
        for (const Vector3d& corner : face.corners)
            corners.push_back(drawn(frame, pixelRatio, corner));
        (picture.*how)(corners, colourOf(face));
    };
    for (const Face& face : shape.faces) {
        const bool flat = face.piece == Piece::Propeller;
        if (!flat && face.normal().dot(frame.projection.towardsViewer()) <= 0.0)
            continue;
        if (!isGlass(face.piece)) {
            draw(face, &DepthPicture::fill);
            continue;
        }
        double near = 0.0;
        for (const Vector3d& corner : face.corners)
            near += frame.projection.see(corner).near / static_cast<double>(face.corners.size());
        glass.push_back({&face, near});
    }
    std::stable_sort(glass.begin(), glass.end(),
                     [](const Pane& a, const Pane& b) { return a.near < b.near; });
    for (const Pane& pane : glass)
        draw(*pane.face, &DepthPicture::glaze);
}

void paintCraft(QPainter& painter, DepthPicture& picture, const QSize& size, const ViewFrame& frame,
                const CraftShape& shape, const CraftShape& ghost, const std::vector<LitPieces>& lit,
                const QPalette& palette)
{
    const double ratio = painter.device()->devicePixelRatioF();
    const Vector3d& viewer = frame.projection.towardsViewer();
    picture.begin((QSizeF(size) * ratio).toSize());
    const Vector3d light = lightOf(frame.projection);
    paintFaces(picture, frame, ratio, shape, [&](const Face& face) {
        const bool flat = face.piece == Piece::Propeller;
        const double facing = face.normal().dot(light);
        return lookOf(face.piece, isLit(lit, face.piece, face.index), palette,
                      flat ? std::abs(facing) : std::max(0.0, facing))
            .fill.color();
    });
    painter.drawImage(QRectF(QPointF(), size), picture.image());

    SeenLines lines(painter, frame, ratio, picture);
    const QPen dashes = ghostPen(palette), none(Qt::NoPen), through = litThroughPen(palette);
    drawEdges(lines, ghost.edges, viewer, [&](const Edge&) { return std::pair(dashes, none); });
    drawEdges(lines, shape.edges, viewer, [&](const Edge& edge) {
        const bool isOn = isLit(lit, edge.piece, edge.index);
        return std::pair(lookOf(edge.piece, isOn, palette, 1.0).edge, isOn ? through : none);
    });
    const QPen cut = lookOf(Piece::Arm, false, palette, 1.0).edge;
    drawEdges(lines, cutsOf(shape.faces), viewer,
              [&](const Edge&) { return std::pair(cut, none); });
    for (const Face& face : shape.faces) {
        if (face.piece != Piece::Propeller)
            continue;
        const QPen pen = lookOf(face.piece, isLit(lit, face.piece, face.index), palette, 1.0).edge;
        double gone = 0.0;
        for (std::size_t k = 0; k < face.corners.size(); ++k)
            gone = lines.draw(face.corners[k], face.corners[(k + 1) % face.corners.size()], pen,
                              none, gone);
    }
    for (const Stroke& stroke : shape.strokes) {
        const bool isOn = isLit(lit, stroke.piece, stroke.index);
        lines.draw(stroke.from, stroke.to, lookOf(stroke.piece, isOn, palette, 1.0).edge,
                   isOn ? through : none);
    }
}

}  // namespace stillbay::ui
