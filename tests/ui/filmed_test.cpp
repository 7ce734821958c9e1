// SPDX-License-Identifier: MIT
#include "core/craft/craft.h"
#include "tests/ui/window_fixture.h"
#include "ui/film/filmed_panel.h"
#include "ui/film/filmed_picture.h"
#include "ui/film/test_scene.h"
#include "ui/window/tuning_view.h"

#include <QCheckBox>
#include <QToolButton>

#include <cstdlib>

namespace stillbay::ui {
namespace {

struct FilmedWindow : Window {
    FilmedWindow() { showPage(panel); }

    FilmedPanel& panel = window.tuning().filmed();
    FilmedPicture& picture = panel.picture();

    // How far the left or right half is from the same scene filmed by a camera that stands still.
    qint64 bent(bool right)
    {
        const QImage image = picture.image().copy();
        FilmedPicture still;
        still.resize(image.size());
        still.setFilm({makeCamera(document.setup().camera), {}, {}});
        const QImage& reference = still.image();
        EXPECT_EQ(reference.size(), image.size());
        const int half = image.width() / 2;
        qint64 sum = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = right ? half : 0; x < (right ? image.width() : half); ++x)
                sum += std::abs(qGray(image.pixel(x, y)) - qGray(reference.pixel(x, y)));
        return sum;
    }
};

TEST_F(FilmedWindow, FollowsTheCursorAndSaysWhatItShows)
{
    open("reedbed");
    window.cursor().moveTo(0.285);  // the worst of the cruise window
    const QImage bad = picture.image().copy();
    const auto tells = [this](const QString& words) {  // words follow ten times a second
        return QTest::qWaitFor([&] { return panel.text().contains(words); }, kPatience_ms);
    };
    EXPECT_TRUE(tells(QStringLiteral("At 28.5 % throttle: wobble"))) << qPrintable(panel.text());
    const QString text = panel.text();
    EXPECT_TRUE(text.contains(QStringLiteral("px, bad."))) << qPrintable(text);
    EXPECT_TRUE(text.contains(QStringLiteral("Without tubes:"))) << qPrintable(text);
    EXPECT_TRUE(picture.accessibleDescription().startsWith(text));
    EXPECT_TRUE(picture.accessibleDescription().contains(QStringLiteral("beats")));
    window.cursor().moveTo(0.8);
    EXPECT_NE(picture.image(), bad);
    EXPECT_TRUE(tells(QStringLiteral("px, clean."))) << qPrintable(panel.text());
}

TEST_F(FilmedWindow, HalvesShowTubesAndNoTubes)
{
    open("reedbed");
    window.cursor().moveTo(0.285);  // on the tubes 3.4 px
    const qint64 mounted = bent(false), rigid = bent(true);
    EXPECT_GT(rigid, 0);
    EXPECT_GT(mounted, 2 * rigid);
    QTest::mouseClick(named<QCheckBox>(QStringLiteral("Right half without tubes")), Qt::LeftButton,
                      {}, QPoint(8, 8));
    EXPECT_GT(bent(true), 2 * rigid);
    EXPECT_EQ(bent(false), mounted);
}

TEST_F(FilmedWindow, GainIsChosenByKeyboardAndChangesThePicture)
{
    open("reedbed");
    window.activateWindow();
    window.cursor().moveTo(0.285);
    const qint64 tenfold = bent(false);
    auto* const ten = named<QToolButton>(QStringLiteral("Wobble drawn 10 times"));
    auto* const one = named<QToolButton>(QStringLiteral("Wobble drawn 1 times"));
    EXPECT_TRUE(ten->isChecked());
    QTest::keyClick(one, Qt::Key_Space);
    EXPECT_TRUE(one->isChecked());
    EXPECT_FALSE(ten->isChecked());
    EXPECT_LT(bent(false), tenfold);
    const QImage plain = picture.grab().toImage();
    QTest::keyClick(ten, Qt::Key_Space);
    EXPECT_NE(picture.grab().toImage(), plain);
}

TEST_F(FilmedWindow, PlaysAtTheCamerasRateAndStopsWhenHidden)
{
    open("reedbed");
    window.cursor().moveTo(0.285);
    const QImage first = picture.image().copy();
    EXPECT_EQ(picture.frame(), 0);
    QTest::keyClick(&picture, Qt::Key_Space);
    ASSERT_TRUE(QTest::qWaitFor([&] { return picture.frame() > 2; }, kPatience_ms));
    EXPECT_NE(picture.image(), first);
    window.hide();
    const int held = picture.frame();
    QTest::qWait(120);  // more than three frames of 30 a second
    EXPECT_EQ(picture.frame(), held);
    window.show();
    ASSERT_TRUE(QTest::qWaitFor([&] { return picture.frame() > held; }, kPatience_ms));
    QTest::mouseClick(named<QToolButton>(QStringLiteral("Stop the film")), Qt::LeftButton);
    EXPECT_EQ(picture.frame(), 0);
    EXPECT_EQ(picture.image(), first);
}

TEST_F(FilmedWindow, KeepsTheCamerasAspectAndFitsItsPlace)
{
    open("reedbed");
    const QSize size = picture.image().size();
    const Camera& camera = document.setup().camera;
    EXPECT_NEAR(1.0 * size.width() / size.height(), 1.0 * camera.width_px / camera.height_px, 0.02);
    EXPECT_LE(size.width(), picture.width());
    EXPECT_LE(size.height(), picture.height());
    EXPECT_GE(size.height(), 90);
}

TEST(TestScene, HasALevelHorizonAndStraightPoles)
{
    const QImage scene = testScene({400, 225}, 20);
    EXPECT_EQ(scene.size(), QSize(440, 265));
    // The middle of a pole's own column changes only between its two colours.
    const int x = 20 + static_cast<int>(0.31 * 400);
    int dark = 0, light = 0;
    for (int y = 25; y < 190; ++y)
        ++(qGray(scene.pixel(x, y)) < 100 ? dark : light);
    EXPECT_GT(dark, 40);
    EXPECT_GT(light, 40);
}

}  // namespace
}  // namespace stillbay::ui
