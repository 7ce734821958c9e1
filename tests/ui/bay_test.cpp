// SPDX-License-Identifier: MIT
#include "core/assess/assess.h"
#include "core/base/rotation.h"
#include "tests/ui/window_fixture.h"
#include "ui/bay/bay_canvas.h"
#include "ui/bay/bay_legend.h"
#include "ui/bay/bay_view.h"
#include "ui/bay/craft_painter.h"
#include "ui/bay/elastic_marks.h"
#include "ui/bay/lit_pieces.h"
#include "ui/widgets/mark_labels.h"

#include <QComboBox>
#include <QImage>
#include <QSet>
#include <QTabWidget>
#include <QTextBrowser>
#include <QToolButton>
#include <QUrl>
#include <QWheelEvent>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace stillbay::ui {
namespace {

constexpr double kClose = 1e-9;

// Oracle: looking along an axis, the other two lie across the picture.
TEST(Projection, LooksAlongTheAxes)
{
    const auto see = [](ViewPoint view, const Vector3d& p) {
        return Projection(view).see(p);
    };
    const Vector3d p(1.0, 2.0, 3.0);
    const Seen front = see({0.0, 0.0}, p);  // against the flight: the craft's left is right
    EXPECT_NEAR(front.right, 2.0, kClose);
    EXPECT_NEAR(front.up, 3.0, kClose);
    EXPECT_NEAR(front.near, 1.0, kClose);
    const Seen left = see({90.0, 0.0}, p);  // from the left, forward is left
    EXPECT_NEAR(left.right, -1.0, kClose);
    EXPECT_NEAR(left.up, 3.0, kClose);
    EXPECT_NEAR(left.near, 2.0, kClose);
    const Seen above = see({180.0, 90.0}, p);  // forward is up, left is left
    EXPECT_NEAR(above.right, -2.0, kClose);
    EXPECT_NEAR(above.up, 1.0, kClose);
    EXPECT_NEAR(above.near, 3.0, kClose);
    const Seen skew = see({37.0, -21.0}, p);
    EXPECT_NEAR(std::hypot(skew.right, skew.up, skew.near), p.norm(), kClose);
}

// Oracle: the sample's own numbers; a tube runs from its hole to where the bay's point went.
TEST(CraftShape, PutsTheBayWhereItIsAndTheTubesBetween)
{
    const stillbay::Setup setup = sampleSetup("quarry");  // drilled
    BayPlace bay;
    bay.centre_mm = {5.0, -3.0, -40.0};
    bay.shift_mm = {1.0, 2.0, -4.0};
    bay.R << 0.0, -1.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 1.0;  // a quarter turn to the left
    const CraftShape shape = craftShape(setup, bay);
    ASSERT_EQ(shape.tubeEnds.size(), setup.mounts.points.size());
    for (std::size_t k = 0; k < shape.tubeEnds.size(); ++k) {
        const auto& [x, y, z] = setup.mounts.points[k].bay_mm;
        EXPECT_NEAR(shape.tubeEnds[k].x(), 5.0 + 1.0 - (y + 3.0), kClose);
        EXPECT_NEAR(shape.tubeEnds[k].y(), -3.0 + 2.0 + (x - 5.0), kClose);
        EXPECT_NEAR(shape.tubeEnds[k].z(), z - 4.0, kClose);
    }
    EXPECT_EQ(shape.centreOfMass_mm, Vector3d(6.0, -1.0, -44.0));

    // Every rim point of a tube lies half a diameter from the line between its ends.
    const auto& hole = *setup.mounts.points[0].anchor_mm;
    const Vector3d from(hole[0], hole[1], hole[2]), to = shape.tubeEnds[0];
    bool found = false;
    for (const Face& face : shape.faces) {
        if (face.piece != Piece::Tube)
            continue;
        for (const Vector3d& corner : face.corners)
            EXPECT_NEAR((corner - from).cross((to - from).normalized()).norm(),
                        0.5 * setup.tube.outer_diameter_mm, 1e-6);
        if (found)
            break;
        found = true;
    }
    EXPECT_TRUE(found);
}

// Oracle: the assessment's own numbers, put on a bay that rests turned: from its centre of mass at
// rest they lie along the airframe's axes.
TEST(ElasticMarks, StandOnTheBayWhereTheAssessmentHasThem)
{
    const stillbay::Setup setup = sampleSetup("reedbed");
    Assessment assessment;
    assessment.bay.centre = {0.005, -0.003, -0.04};
    assessment.rest.shift = {0.001, 0.002, -0.004};
    assessment.rest.rotation = {0.02, -0.05, 0.11};
    assessment.elastic_centre = {
        .rollHeight = 0.006, .pitchHeight = -0.002, .p_BE = {0.001, -0.004, 0.002}};
    BayPlace bay;
    bay.centre_mm = {5.0, -3.0, -40.0};
    bay.shift_mm = {1.0, 2.0, -4.0};
    bay.R = rotationFromVector(assessment.rest.rotation);

    const ElasticMarks marks = elasticMarks(setup, assessment);

    const Vector3d mass = bay.moved(bay.centre_mm);
    const auto from = [&](const Vector3d& p) {
        return Vector3d(bay.moved(p) - mass);
    };
    EXPECT_LE((from(marks.centre_mm) - Vector3d(1.0, -4.0, 2.0)).norm(), kClose);
    const auto& [front, rear] = marks.rollAxis_mm;
    EXPECT_LE((from(0.5 * (front + rear)) - Vector3d(1.0, -4.0, 6.0)).norm(), kClose);
    EXPECT_LE((from(front) - from(rear)).tail<2>().norm(), kClose);
    EXPECT_GT(from(front).x(), from(rear).x());
    const auto& [left, right] = marks.pitchAxis_mm;
    EXPECT_LE((from(0.5 * (left + right)) - Vector3d(1.0, -4.0, -2.0)).norm(), kClose);
    EXPECT_NEAR(from(left).x(), from(right).x(), kClose);
    EXPECT_NEAR(from(left).z(), from(right).z(), kClose);
    EXPECT_GT(from(left).y(), from(right).y());
}

// Each field's path leads to what it is about, and to nothing else.
TEST(LitPieces, FollowTheFieldsPath)
{
    using Pieces = std::vector<LitPieces>;
    stillbay::Setup setup = sampleSetup("reedbed");
    const auto of = [&setup](const char* path) {
        return piecesOf(QString::fromLatin1(path), setup);
    };
    EXPECT_EQ(of("bay.parts[1].mass_g"), (Pieces{{Piece::Bay, 1}}));
    EXPECT_EQ(of("bay.parts[12].centre_mm[0]"), (Pieces{{Piece::Bay, 12}}));
    EXPECT_EQ(of("airframe.parts[0].size_mm"), (Pieces{{Piece::Airframe, 0}}));
    EXPECT_EQ(of("airframe.arms[3].length_mm"), (Pieces{{Piece::Arm, 3}}));
    EXPECT_EQ(of("airframe.arm.width_mm"), (Pieces{{Piece::Arm, kEveryPiece}}));
    EXPECT_EQ(of("drive.motor.mass_g"), (Pieces{{Piece::Motor, kEveryPiece}}));
    EXPECT_EQ(of("drive.propeller.mass_g"), (Pieces{{Piece::Propeller, kEveryPiece}}));
    EXPECT_EQ(of("camera.tilt_down_deg"), (Pieces{{Piece::View, kEveryPiece}}));
    EXPECT_EQ(of("tube.bore_mm"), (Pieces{{Piece::Tube, kEveryPiece}}));
    EXPECT_EQ(of("mounts.free_length_mm"), (Pieces{{Piece::Tube, kEveryPiece}}));
    EXPECT_EQ(of("mounts.points[2].azimuth_deg"), (Pieces{{Piece::Tube, 2}}));
    for (const char* const path : {"", "bay.travel_mm", "flight.air_density_kg_m3", "limits.bad_px",
                                   "drive.unbalance_g_mm", "tubes", "bay.parts[x].mass_g"})
        EXPECT_EQ(of(path), Pieces{}) << path;

    // The pack's volts belong to the heaviest part where its name says that it is the pack.
    EXPECT_EQ(of("drive.battery.cells"), (Pieces{{Piece::Bay, 0}}));
    setup.bay.parts[0].name = "Akku, 4 Zellen";
    EXPECT_EQ(of("drive.battery.cells"), (Pieces{{Piece::Bay, 0}}));
    setup.bay.parts[0].name = "backpack";
    EXPECT_EQ(of("drive.battery.cells"), Pieces{});
    setup.bay.parts[0].name = "battery";
    setup.bay.parts[1].mass_g = 5000.0;  // the camera is the heaviest now
    EXPECT_EQ(of("drive.battery.cells"), Pieces{});
    setup.bay.parts.clear();
    EXPECT_EQ(of("drive.battery.cells"), Pieces{});
}

// The nearest of some boxes along a line of sight, by where the line enters each: planes by pairs.
int firstHit(const std::vector<Part>& boxes, const Vector3d& start, const Vector3d& along)
{
    int first = -1;
    double nearest = -1e9;
    for (std::size_t k = 0; k < boxes.size(); ++k) {
        double enters = -1e9, leaves = 1e9;  // along the way from the viewer's side
        for (Eigen::Index axis = 0; axis < 3; ++axis) {
            const auto i = static_cast<std::size_t>(axis);
            const double a = (boxes[k].centre_mm[i] - 0.5 * boxes[k].size_mm[i] - start[axis]),
                         b = (boxes[k].centre_mm[i] + 0.5 * boxes[k].size_mm[i] - start[axis]);
            enters = std::max(enters, std::min(a / along[axis], b / along[axis]));
            leaves = std::min(leaves, std::max(a / along[axis], b / along[axis]));
        }
        if (enters < leaves && -enters > nearest) {
            nearest = -enters;
            first = static_cast<int>(k);
        }
    }
    return first;
}

// Oracle: own derivation, brute force: a ray through every pixel, cut with every box's planes. Two
// boxes that cut through each other, a third that stands on one of them, seen askew.
TEST(DepthPicture, TheNearerOfPartsThatMeetIsSeen)
{
    stillbay::Setup setup;
    setup.bay.parts = {{"a", 1.0, {0.0, 0.0, 0.0}, {80.0, 40.0, 30.0}, {}},
                       {"b", 1.0, {17.0, 9.0, 8.0}, {30.0, 90.0, 26.0}, {}},
                       {"c", 1.0, {-25.0, 3.0, 20.0}, {20.0, 24.0, 10.0}, {}}};
    const CraftShape shape = bayShape(setup, {});
    const std::array colours{QColor(Qt::red), QColor(Qt::green), QColor(Qt::blue)};
    const QSize size(160, 120);
    for (const ViewPoint& side : {ViewPoint{}, ViewPoint{211.0, -33.0}, ViewPoint{97.0, 71.0}}) {
        std::vector<Vector3d> corners;
        for (const Face& face : shape.faces)
            corners.insert(corners.end(), face.corners.begin(), face.corners.end());
        const ViewFrame frame = fitted(side, corners, QRectF(5.0, 5.0, 150.0, 110.0));
        DepthPicture picture;
        picture.begin(size);
        paintFaces(picture, frame, 1.0, shape,
                   [&](const Face& face) { return colours[static_cast<std::size_t>(face.index)]; });
        int compared = 0, boxesSeen = 0;
        std::array<bool, 3> seen{};
        for (int y = 0; y < size.height(); ++y)
            for (int x = 0; x < size.width(); ++x) {
                const auto hit = [&](double dx, double dy) {
                    const double right =
                                     (x + 0.5 + dx - frame.origin.x()) / frame.pixelsPerMillimetre,
                                 up = (frame.origin.y() - y - 0.5 - dy) / frame.pixelsPerMillimetre;
                    const Projection& p = frame.projection;
                    return firstHit(setup.bay.parts, right * p.rightwards() + up * p.upwards(),
                                    -p.towardsViewer());
                };
                const int middle = hit(0.0, 0.0);
                if (hit(0.01, 0.01) != middle || hit(-0.01, 0.01) != middle ||
                    hit(0.01, -0.01) != middle || hit(-0.01, -0.01) != middle)
                    continue;  // on an edge
                ++compared;
                const QRgb drawn = picture.image().pixel(x, y);
                if (middle < 0) {
                    ASSERT_EQ(qAlpha(drawn), 0) << x << ' ' << y;
                } else {
                    seen[static_cast<std::size_t>(middle)] = true;
                    ASSERT_EQ(drawn, colours[static_cast<std::size_t>(middle)].rgb())
                        << x << ' ' << y << ' ' << side.azimuth_deg;
                }
            }
        for (const bool one : seen)
            boxesSeen += one ? 1 : 0;
        EXPECT_GT(compared, 160 * 110);
        EXPECT_GE(boxesSeen, 2);
    }
}

// Oracle: by hand. Two boxes that cross at right angles: their faces cut in a closed line.
TEST(CutsOf, RunWhereFacesOfDifferentSolidsCross)
{
    stillbay::Setup setup;
    setup.bay.parts = {{"post", 1.0, {3.0, 4.0, 0.0}, {10.0, 6.0, 100.0}, {}},
                       {"plate", 1.0, {0.0, 0.0, 0.0}, {60.0, 60.0, 8.0}, {}}};
    const std::vector<Edge> cuts = cutsOf(bayShape(setup, {}).faces);
    ASSERT_EQ(cuts.size(), 8U);  // around the post, on either side of the plate
    double length = 0.0;
    for (const Edge& cut : cuts) {
        EXPECT_NEAR(std::abs(cut.from.z()), 4.0, kClose);
        EXPECT_NEAR(cut.from.z(), cut.to.z(), kClose);
        length += (cut.to - cut.from).norm();
    }
    EXPECT_NEAR(length, 2.0 * (10.0 + 6.0 + 10.0 + 6.0), kClose);
    setup.bay.parts[0].centre_mm = {100.0, 0.0, 0.0};
    EXPECT_TRUE(cutsOf(bayShape(setup, {}).faces).empty());
}

TEST(MarkLabels, KeepApartAndStayOnTheirSide)
{
    MarkLabels labels;
    const QRectF room(0.0, 0.0, 400.0, 300.0);
    const QSizeF size(90.0, 16.0);
    const QPointF mark(200.0, 150.0);
    labels.begin(room, {{190.0, 140.0, 20.0, 20.0}});
    std::vector<QRectF> boxes;
    for (int key = 0; key < 12; ++key)
        boxes.push_back(labels.place(key, mark, 12.0, size).box);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        EXPECT_TRUE(room.contains(boxes[i])) << i;
        for (std::size_t j = 0; j < i; ++j)
            EXPECT_FALSE(boxes[i].intersects(boxes[j])) << i << ' ' << j;
    }

    // Alone now, the last would go right above the mark; it stays where it was until told.
    labels.begin(room);
    EXPECT_EQ(labels.place(11, mark, 12.0, size).box, boxes[11]);
    labels.forgetSides();
    labels.begin(room);
    EXPECT_EQ(labels.place(11, mark, 12.0, size).box, boxes[0]);
    labels.begin({0.0, 0.0, 20.0, 10.0});  // no room at all: said all the same
    EXPECT_EQ(labels.place(0, mark, 12.0, size).box, boxes[0]);
}

struct Bay : Window {
    Bay()
    {
        open("reedbed");
        showPage(*view);
        QCoreApplication::processEvents();
    }

    QImage picture() { return view->canvas().grab().toImage(); }

    static int colours(const QImage& image)
    {
        QSet<QRgb> found;
        for (int y = 0; y < image.height(); y += 2)
            for (int x = 0; x < image.width(); x += 2)
                found << image.pixel(x, y);
        return static_cast<int>(found.size());
    }

    BayView* view = window.findChild<BayView*>();
    QComboBox& motion = *named<QComboBox>(QStringLiteral("Motion to show"));
    QComboBox& pose = *named<QComboBox>(QStringLiteral("Where the bay is shown"));
};

TEST_F(Bay, IsDrawnAndTurnsByMouseAndKeys)
{
    BayCanvas& canvas = view->canvas();
    const QImage first = picture();
    EXPECT_GT(colours(first), 40);
    QTest::keyClick(&canvas, Qt::Key_Left);
    EXPECT_NEAR(canvas.view().azimuth_deg, 45.0, kClose);
    EXPECT_NE(picture(), first);
    QTest::keyClick(&canvas, Qt::Key_Right);
    QTest::keyClick(&canvas, Qt::Key_Plus);
    EXPECT_GT(canvas.zoom(), 1.0);
    QTest::keyClick(&canvas, Qt::Key_0);
    EXPECT_EQ(canvas.zoom(), 1.0);
    const ViewPoint before = canvas.view();
    QTest::mousePress(&canvas, Qt::LeftButton, {}, QPoint(100, 100));
    QTest::mouseMove(&canvas, QPoint(140, 130));
    QTest::mouseRelease(&canvas, Qt::LeftButton, {}, QPoint(140, 130));
    EXPECT_LT(canvas.view().azimuth_deg, before.azimuth_deg);
    EXPECT_GT(canvas.view().elevation_deg, before.elevation_deg);
    QTest::mouseClick(named<QToolButton>(QStringLiteral("View: Above")), Qt::LeftButton);
    EXPECT_EQ(canvas.view(), (ViewPoint{180.0, 90.0}));
}

// Oracle: the drawn corners themselves. At every size and from every side the craft, or the bay
// with its tubes, just fills the drawing's room one way and stays inside it the other.
TEST_F(Bay, TheSubjectFillsTheDrawing)
{
    BayCanvas& canvas = view->canvas();
    const CraftShape shape = craftShape(document.setup(), {});
    for (const auto subject : {BayCanvas::Subject::Craft, BayCanvas::Subject::Bay}) {
        canvas.setSubject(subject);
        for (const QSize size : {QSize(1024, 700), QSize(1280, 800), QSize(1920, 1080)}) {
            window.resize(size);
            QCoreApplication::processEvents();
            for (const ViewPoint& side : {ViewPoint{}, ViewPoint{0.0, 0.0}, ViewPoint{90.0, 0.0},
                                          ViewPoint{180.0, 90.0}, ViewPoint{211.0, -33.0}}) {
                canvas.setView(side);
                QRectF drawn;
                for (const Face& face : shape.faces)
                    if (subject == BayCanvas::Subject::Craft || face.piece == Piece::Bay ||
                        face.piece == Piece::Tube)
                        for (const Vector3d& corner : face.corners)
                            drawn |= QRectF(canvas.placeOf(corner), QSizeF(1e-6, 1e-6));
                const QRectF room = canvas.room();
                EXPECT_TRUE(room.adjusted(-3.0, -3.0, 3.0, 3.0).contains(drawn));
                EXPECT_GT(std::max(drawn.width() / room.width(), drawn.height() / room.height()),
                          0.9)
                    << size.width() << ' ' << side.azimuth_deg;
            }
        }
    }
}

TEST_F(Bay, AButtonZoomsToTheBayAndBack)
{
    BayCanvas& canvas = view->canvas();
    const auto scale = [&canvas] {
        const QPointF way = canvas.placeOf({0.0, 0.0, 100.0}) - canvas.placeOf({0.0, 0.0, 0.0});
        return std::hypot(way.x(), way.y());
    };
    const double whole = scale();
    QToolButton* button = nullptr;
    for (QToolButton* const one : view->findChildren<QToolButton*>())
        if (one->text() == QStringLiteral("Zoom to bay"))
            button = one;
    ASSERT_TRUE(button);
    QTest::mouseClick(button, Qt::LeftButton);
    EXPECT_GT(scale(), 1.8 * whole);
    EXPECT_EQ(button->text(), QStringLiteral("Whole craft"));
    QTest::mouseClick(named<QToolButton>(QStringLiteral("View: Left")), Qt::LeftButton);
    EXPECT_EQ(canvas.subject(), BayCanvas::Subject::Bay);
    QTest::mouseClick(button, Qt::LeftButton);
    EXPECT_EQ(button->text(), QStringLiteral("Zoom to bay"));
    QTest::mouseClick(named<QToolButton>(QStringLiteral("View: Oblique")), Qt::LeftButton);
    EXPECT_NEAR(scale(), whole, kClose);

    // The wheel keeps what is under the pointer there; 0 shows the whole craft again.
    const Vector3d battery(0.0, 0.0, -40.0);
    const QPointF before = canvas.placeOf(battery);
    QWheelEvent wheel(before, canvas.mapToGlobal(before), {}, {0, 360}, Qt::NoButton,
                      Qt::NoModifier, Qt::NoScrollPhase, false);
    QCoreApplication::sendEvent(&canvas, &wheel);
    EXPECT_NEAR(scale(), 1.2 * 1.2 * 1.2 * whole, 1e-6);
    EXPECT_NEAR(std::hypot(canvas.placeOf(battery).x() - before.x(),
                           canvas.placeOf(battery).y() - before.y()),
                0.0, 1e-6);
    QTest::keyClick(&canvas, Qt::Key_0);
    EXPECT_NEAR(scale(), whole, kClose);
}

// At rest dashes show where the bay is drawn; the legend says what is what, and no more.
TEST_F(Bay, TheLegendTellsWhatIsDrawn)
{
    EXPECT_TRUE(view->canvas().hasGhost());
    EXPECT_TRUE(view->legend().text().contains(QStringLiteral("solid: bay at rest")));
    EXPECT_TRUE(view->legend().text().contains(QStringLiteral("dashed: bay as drawn")));
    EXPECT_FALSE(view->legend().text().contains(QStringLiteral("thick outline")));
    view->setFocusedField(QStringLiteral("camera.width_px"));
    EXPECT_TRUE(view->legend().text().contains(QStringLiteral("thick outline")));
    const int height = view->canvas().height();
    view->setFocusedField({});  // the drawing does not hop
    QCoreApplication::processEvents();
    EXPECT_EQ(view->canvas().height(), height);
    EXPECT_FALSE(view->legend().text().contains(QStringLiteral("thick outline")));
    pose.setCurrentIndex(0);
    EXPECT_FALSE(view->canvas().hasGhost());
    EXPECT_TRUE(view->legend().text().contains(QStringLiteral("solid: bay as drawn")));
    EXPECT_FALSE(view->legend().text().contains(QStringLiteral("dashed")));
    EXPECT_FALSE(view->legend().text().contains(QStringLiteral("diamond")));
}

// Beside another panel, about 420 pixels each way: all controls are inside, the drawing keeps most
// of the room, and labels keep apart, for crafts of 3, 4, 6 and 8 arms.
TEST(BayView, HasRoomInASmallPlace)
{
    for (const char* const sample : {"saltmarsh", "reedbed", "quarry", "eight"}) {
        stillbay::Setup setup = sampleSetup(sample == std::string("eight") ? "reedbed" : sample);
        if (sample == std::string("eight")) {
            const Arm arm = setup.airframe.arms.front();
            setup.airframe.arms.assign(8, arm);
            for (int k = 0; k < 8; ++k)
                setup.airframe.arms[static_cast<std::size_t>(k)].azimuth_deg = 22.5 + 45.0 * k;
        }
        BayView view;
        view.resize(420, 420);
        view.setResult(setup, assess(setup));
        view.show();
        QCoreApplication::processEvents();
        view.grab();
        EXPECT_EQ(view.size(), QSize(420, 420));
        EXPECT_GE(view.canvas().height(), 210) << sample;
        for (const QWidget* const child : view.findChildren<QWidget*>())
            if (child->isVisible() && child->parentWidget() == &view) {
                EXPECT_TRUE(view.rect().contains(child->geometry()))
                    << sample << ' ' << child->accessibleName().toStdString();
            }
        const std::vector<QRectF>& boxes = view.canvas().labelBoxes();
        for (std::size_t i = 0; i < boxes.size(); ++i)
            for (std::size_t j = 0; j < i; ++j)
                EXPECT_FALSE(boxes[i].intersects(boxes[j])) << sample << ' ' << i << ' ' << j;
    }
}

// Oracle: the assessment's rest shift, seen from the front, at the drawing's own scale.
TEST_F(Bay, AtRestStandsWhereTheTubesHoldIt)
{
    EXPECT_TRUE(view->text().startsWith(QStringLiteral("The bay rests where it is drawn")));
    change([](stillbay::Setup& setup) {
        for (MountPoint& point : setup.mounts.points)
            point.elevation_deg = 14;  // steeper than the weight asks
    });
    settle();
    QTest::mouseClick(named<QToolButton>(QStringLiteral("View: Front")), Qt::LeftButton);
    EXPECT_TRUE(view->text().startsWith(QStringLiteral("The bay rises 2.1")))
        << view->text().toStdString();
    const QImage atRest = picture();
    pose.setCurrentIndex(0);
    EXPECT_NE(picture(), atRest);
    EXPECT_TRUE(view->text().contains(QStringLiteral("while it is fitted")));
}

// Oracle: the assessment's own elastic centre; as drawn nothing is said of it.
TEST_F(Bay, MarksTheElasticCentreAtRest)
{
    ASSERT_TRUE(view->canvas().elastic());
    EXPECT_TRUE(view->text().contains(QStringLiteral("Sideways, the tubes hold the bay")))
        << view->text().toStdString();
    const QString spoken = view->canvas().accessibleDescription();
    EXPECT_TRUE(spoken.startsWith(view->text()));
    EXPECT_TRUE(spoken.contains(QStringLiteral("diamond: elastic centre")));
    const QImage marked = picture();
    view->canvas().setElastic({});
    EXPECT_NE(picture(), marked);
    pose.setCurrentIndex(0);
    EXPECT_FALSE(view->canvas().elastic());
    EXPECT_FALSE(view->canvas().accessibleDescription().contains(QStringLiteral("elastic centre")));
}

// From every side, near and far, no label covers another or leaves the picture.
TEST_F(Bay, LabelsKeepApart)
{
    BayCanvas& canvas = view->canvas();
    for (const ViewPoint& side : {ViewPoint{}, ViewPoint{0.0, 0.0}, ViewPoint{90.0, 0.0},
                                  ViewPoint{180.0, 90.0}, ViewPoint{211.0, -33.0}})
        for (const double zoom : {0.5, 1.0, 2.0}) {
            canvas.setView(side);
            canvas.setZoom(zoom);
            picture();
            const std::vector<QRectF>& boxes = canvas.labelBoxes();
            ASSERT_EQ(boxes.size(),
                      9U);  // four tubes, centre of mass, camera, elastic centre, axes
            for (std::size_t i = 0; i < boxes.size(); ++i)
                for (std::size_t j = 0; j < i; ++j)
                    EXPECT_FALSE(boxes[i].intersects(boxes[j]))
                        << side.azimuth_deg << ' ' << zoom << ' ' << i << ' ' << j;
        }
}

// The lit part has another colour in its middle and a thicker outline; others stay.
TEST_F(Bay, TheFocusedFieldsPartLightsUp)
{
    const QImage plain = picture();
    view->setFocusedField(QStringLiteral("airframe.arms[1].length_mm"));
    const QImage lit = picture();
    EXPECT_NE(lit, plain);
    const Arm& arm = document.setup().airframe.arms[1];
    const double azimuth = arm.azimuth_deg * 3.14159265358979 / 180.0;
    const auto on = [&](double radius_mm, double aside_mm) {
        return view->canvas()
            .placeOf({radius_mm * std::cos(azimuth) - aside_mm * std::sin(azimuth),
                      radius_mm * std::sin(azimuth) + aside_mm * std::cos(azimuth),
                      arm.height_mm + 0.5 * document.setup().airframe.arm.height_mm})
            .toPoint();
    };
    const double middle_mm = arm.root_radius_mm + 0.53 * arm.length_mm;
    EXPECT_NE(lit.pixelColor(on(middle_mm, 0.0)), plain.pixelColor(on(middle_mm, 0.0)));
    view->setFocusedField(QStringLiteral("flight.air_density_kg_m3"));
    EXPECT_EQ(picture(), plain);
    for (const char* const field : {"bay.parts[0].mass_g", "camera.width_px", "tube.bore_mm",
                                    "mounts.points[0].azimuth_deg", "drive.motor.mass_g"}) {
        view->setFocusedField(QString::fromLatin1(field));
        EXPECT_NE(picture(), plain) << field;
    }
}

TEST_F(Bay, AModeSwingsAndStopsWhenNobodyLooks)
{
    const QImage still = picture();
    QTest::qWait(100);
    EXPECT_EQ(picture(), still);
    motion.setCurrentIndex(1);
    EXPECT_TRUE(motion.currentText().contains(QStringLiteral("bay")));
    EXPECT_TRUE(view->text().contains(QStringLiteral("This mode (")));
    EXPECT_TRUE(QTest::qWaitFor([&] { return picture() != still; }, kPatience_ms));
    const QImage swung = picture();
    EXPECT_TRUE(QTest::qWaitFor([&] { return picture() != swung; }, kPatience_ms));
    window.findChild<QTabWidget*>()->setCurrentIndex(0);
    EXPECT_FALSE(view->swings());
    motion.setCurrentIndex(0);
    showPage(*view);
    EXPECT_EQ(picture(), still);
}

// A link in the findings shows its mode.
TEST_F(Bay, AModeInTheFindingsLeadsHere)
{
    auto* const tabs = window.findChild<QTabWidget*>();
    tabs->setCurrentIndex(0);
    auto* const text = named<QTextBrowser>(QStringLiteral("Findings"));
    EXPECT_TRUE(text->toHtml().contains(QStringLiteral("href=\"bench:5\"")));
    emit text->anchorClicked(QUrl(QStringLiteral("bench:0")));
    EXPECT_TRUE(tabs->currentWidget()->isAncestorOf(view));
    EXPECT_EQ(motion.currentIndex(), 7);
    EXPECT_TRUE(motion.currentText().startsWith(QStringLiteral("on the bench, 14.3")))
        << motion.currentText().toStdString();
    EXPECT_TRUE(view->swings());
}

TEST_F(Bay, WithoutAnAnswerTheDrawingStays)
{
    change([](auto& s) {
        s.mounts.points.resize(1);
        s.mounts.ends = Ends::Hinged;
    });
    settle();
    EXPECT_TRUE(view->text().startsWith(QStringLiteral("No answer")));
    EXPECT_GT(colours(picture()), 40);
}

}  // namespace
}  // namespace stillbay::ui
