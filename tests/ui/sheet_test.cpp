// SPDX-License-Identifier: MIT
// The build sheet as the program writes it, measured in the PDF by tools that know nothing of it:
// pdfinfo, pdftotext, pdftocairo and pdftoppm.
#include "core/assess/assess.h"
#include "core/assess/texts.h"
#include "core/base/units.h"
#include "core/setup/text.h"
#include "tests/ui/program_fixture.h"
#include "tests/ui/samples.h"
#include "ui/sheet/build_sheet.h"
#include "ui/widgets/display_text.h"

#include <QFileInfo>
#include <QImage>
#include <QLineF>
#include <QPrinter>
#include <QRegularExpression>
#include <QXmlStreamReader>

#include <algorithm>
#include <cmath>
#include <tuple>

namespace stillbay::ui {
namespace {

constexpr double kPoint_mm = 25.4 / 72.0;
// A dot of the PDF is 0.02 mm; the tools round to less.
constexpr double kDot_mm = 0.03;

// A path on a page, in mm from its upper left corner.
struct Path {
    QPolygonF points;
    bool isCurved = false;

    QRectF box() const { return points.boundingRect(); }
    bool isSized(double side_mm) const
    {
        return std::abs(box().width() - side_mm) < kDot_mm &&
               std::abs(box().height() - side_mm) < kDot_mm;
    }
};

Path pathOf(const QString& outline, const QString& matrix)
{
    static const QRegularExpression kNumber(QStringLiteral("-?[0-9]+(\\.[0-9]+)?"));
    std::vector<double> m, xy;
    for (const auto& match : kNumber.globalMatch(matrix))
        m.push_back(match.captured().toDouble());
    for (const auto& match : kNumber.globalMatch(outline))
        xy.push_back(match.captured().toDouble());
    const QTransform toPoints =
        m.size() == 6 ? QTransform(m[0], m[1], m[2], m[3], m[4], m[5]) : QTransform();
    Path path;
    path.isCurved = outline.contains(u'C');
    for (std::size_t k = 0; k + 1 < xy.size(); k += 2)
        path.points << toPoints.map(QPointF(xy[k], xy[k + 1])) * kPoint_mm;
    return path;
}

struct Sheet : Program {
    Sheet() { output = folder.filePath(QStringLiteral("sheet.pdf")); }

    // Writes a craft of the test's own beside the sheet.
    QString craftFile(const stillbay::Setup& setup)
    {
        QFile file(folder.filePath(QStringLiteral("craft.stillbay")));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(QByteArray::fromStdString(writeSetup(setup).value()));
        return file.fileName();
    }

    void write(const QString& craft, const QString& paper, const QStringList& more = {})
    {
        ASSERT_EQ(
            run(QStringList{QStringLiteral("sheet"), craft, QStringLiteral("--output"), output,
                            QStringLiteral("--force"), QStringLiteral("--paper"), paper} +
                more),
            0)
            << err.constData();
        EXPECT_TRUE(out.isEmpty());
        EXPECT_TRUE(err.isEmpty()) << err.constData();
    }

    int pages()
    {
        EXPECT_EQ(runTool(QStringLiteral("pdfinfo"), {output}), 0)
            << "pdfinfo is missing: install poppler-utils";
        static const QRegularExpression kPages(QStringLiteral("Pages: *([0-9]+)"));
        return kPages.match(QString::fromUtf8(out)).captured(1).toInt();
    }

    // Without ligatures and with one kind of blank.
    static QString plain(const QString& text)
    {
        return text.normalized(QString::NormalizationForm_KC).simplified();
    }

    // All words of some pages in reading order, one blank between them.
    QString text(int first = 1, int last = 99)
    {
        EXPECT_EQ(
            runTool(QStringLiteral("pdftotext"),
                    {QStringLiteral("-layout"), QStringLiteral("-f"), QString::number(first),
                     QStringLiteral("-l"), QString::number(last), output, QStringLiteral("-")}),
            0);
        return plain(QString::fromUtf8(out));
    }

    std::vector<Path> paths(int page)
    {
        EXPECT_EQ(
            runTool(QStringLiteral("pdftocairo"),
                    {QStringLiteral("-svg"), QStringLiteral("-f"), QString::number(page),
                     QStringLiteral("-l"), QString::number(page), output, QStringLiteral("-")}),
            0);
        std::vector<Path> found;
        QXmlStreamReader svg(out);
        while (!svg.atEnd()) {
            svg.readNext();
            const auto attribute = [&svg](const char* name) {
                return svg.attributes().value(QLatin1String(name)).toString();
            };
            // An attribute of its own, or, by an older cairo, part of the style.
            if (svg.isStartElement() && svg.name() == QStringLiteral("path") &&
                (svg.attributes().hasAttribute(QStringLiteral("stroke-width")) ||
                 attribute("style").contains(QStringLiteral("stroke-width"))))
                found.push_back(pathOf(attribute("d"), attribute("transform")));
        }
        return found;
    }

    QString output;
};

// Centres of all outlines of one kind and size.
std::vector<QPointF> centres(const std::vector<Path>& paths, bool curved, double side_mm)
{
    std::vector<QPointF> found;
    for (const Path& path : paths)
        if (path.points.size() > 2 && path.isCurved == curved && path.isSized(side_mm))
            found.push_back(path.box().center());
    return found;
}

bool hasPointAt(const std::vector<QPointF>& points, const QPointF& place)
{
    return std::any_of(points.begin(), points.end(), [&](const QPointF& point) {
        return QLineF(point, place).length() < kDot_mm;
    });
}

// Where the anchor lies, from the definition of the setup file.
Triple anchorByDefinition(const Mounts& mounts, const MountPoint& point)
{
    if (point.anchor_mm)
        return *point.anchor_mm;
    const double length = mounts.free_length_mm * point.stretch.value_or(*mounts.stretch);
    const double a = point.azimuth_deg * unit::deg, e = point.elevation_deg * unit::deg;
    return {point.bay_mm[0] + length * std::cos(e) * std::cos(a),
            point.bay_mm[1] + length * std::cos(e) * std::sin(a),
            point.bay_mm[2] + length * std::sin(e)};
}

struct EachSheet : Sheet, testing::WithParamInterface<std::tuple<const char*, const char*>> {
    const char* sample = std::get<0>(GetParam());
    QString paper = QString::fromLatin1(std::get<1>(GetParam()));
    const stillbay::Setup setup = sampleSetup(sample);

    int firstTemplate()
    {
        const int count = pages();
        for (int page = 1; page <= count; ++page)
            if (text(page, page).contains(QStringLiteral("Drilling template")))
                return page;
        ADD_FAILURE() << "no template";
        return count;
    }
};

TEST_P(EachSheet, HasTheRightPaperAndNumberedPages)
{
    write(samplePath(sample), paper);
    const int count = pages();
    EXPECT_TRUE(out.contains(paper == QStringLiteral("a4") ? "595 x 842 pts (A4)"
                                                           : "612 x 792 pts (letter)"))
        << out.constData();
    for (int page = 1; page <= count; ++page) {
        const QString all = text(page, page);
        EXPECT_TRUE(all.contains(QStringLiteral("page %1 of %2").arg(page).arg(count)))
            << qPrintable(all);
        EXPECT_TRUE(all.contains(QString::fromStdString(setup.name)));
    }
}

// Each page of text is filled for three quarters at least.
TEST_P(EachSheet, TextFillsItsPages)
{
    write(samplePath(sample), paper);
    const int last = firstTemplate() - 1;
    ASSERT_GE(last, 1);
    const double height = paper == QStringLiteral("a4") ? 842.0 : 792.0;
    static const QRegularExpression kBottom(QStringLiteral("<line [^>]*yMax=\"([0-9.]+)\""));
    for (int page = 1; page <= last; ++page) {
        const QString number = QString::number(page);
        ASSERT_EQ(runTool(QStringLiteral("pdftotext"),
                          {QStringLiteral("-bbox-layout"), QStringLiteral("-f"), number,
                           QStringLiteral("-l"), number, output, QStringLiteral("-")}),
                  0);
        double lowest = 0.0;
        for (const auto& line : kBottom.globalMatch(QString::fromUtf8(out)))
            lowest = std::max(lowest, line.captured(1).toDouble());
        EXPECT_GT(lowest, 0.75 * height) << page;
        EXPECT_LT(lowest, height - 10.0 / kPoint_mm) << page;
    }
}

// Oracle: definitions of cut length and distance; the assessment's own words and numbers.
TEST_P(EachSheet, SaysWhatToCutAndWhatItIsTunedFor)
{
    write(samplePath(sample), paper, {QStringLiteral("--grip"), QStringLiteral("7.5")});
    const QString all = text();
    const Assessment assessment = assess(setup).value();
    const auto expect = [&all](const QString& wanted) {
        EXPECT_TRUE(all.contains(plain(wanted))) << qPrintable(wanted);
    };
    const auto heaviest =
        std::max_element(setup.bay.parts.begin(), setup.bay.parts.end(),
                         [](const Part& x, const Part& y) { return x.mass_g < y.mass_g; });
    expect(QStringLiteral("(%1) sits with its middle at %2")
               .arg(QString::fromStdString(heaviest->name))
               .arg(heaviest->centre_mm[0], 0, 'f', 1));
    const Mounts& mounts = setup.mounts;
    expect(QStringLiteral("Free length %1 mm In the clamp, each end 7.5 mm CUT LENGTH %2 mm")
               .arg(mounts.free_length_mm, 0, 'f', 1)
               .arg(mounts.free_length_mm + 15.0, 0, 'f', 1));
    for (std::size_t k = 0; k < mounts.points.size(); ++k) {
        const Triple a = anchorByDefinition(mounts, mounts.points[k]), b = mounts.points[k].bay_mm;
        const double distance_mm = std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
        expect(QStringLiteral("%1 %2 mm %3 mm %4 %")
                   .arg(k + 1)
                   .arg(mounts.free_length_mm, 0, 'f', 1)
                   .arg(distance_mm, 0, 'f', 1)
                   .arg(100.0 * (distance_mm / mounts.free_length_mm - 1.0), 0, 'f', 1));
        QString row = QString::number(k + 1);
        for (const Triple& place : {a, b})
            for (const double coordinate : place)
                row += QStringLiteral(" %1").arg(coordinate, 0, 'f', 1);
        expect(row);
    }
    expect(QStringLiteral("%1 rpm/V").arg(setup.drive.motor.kv_rpm_per_v));
    expect(QStringLiteral("%1 px (").arg(assessment.cruise->worst_px(), 0, 'f', 2));
    expect(QString::fromStdString(english(restText(assessment.rest))));
    for (const Warning& warning : assessment.warnings)
        expect(QString::fromStdString(english(warning.text)));
    for (const Phrase& warning : safetyWarnings())
        expect(QString::fromStdString(english(warning)));
}

// Oracle: a ruler. 100 mm along both edges, a tick each millimetre.
void expectTrueRulers(const std::vector<Path>& drawn)
{
    int rulers = 0;
    for (const Path& path : drawn) {
        const QLineF line(path.points.front(), path.points.back());
        if (path.points.size() != 2 || std::abs(line.length() - 100.0) > 0.1)
            continue;
        ++rulers;
        EXPECT_NEAR(line.length(), 100.0, kDot_mm);
        EXPECT_TRUE(std::abs(line.dx()) < kDot_mm || std::abs(line.dy()) < kDot_mm);
        for (int mm = 0; mm <= 100; ++mm) {
            const QPointF place = line.pointAt(mm / 100.0);
            EXPECT_TRUE(std::any_of(drawn.begin(), drawn.end(), [&](const Path& tick) {
                return tick.points.size() == 2 &&
                       QLineF(tick.points[0], place).length() < kDot_mm &&
                       tick.box().width() + tick.box().height() < 5.0;
            })) << mm;
        }
    }
    EXPECT_EQ(rulers, 2);
}

TEST_P(EachSheet, RulersAreTrue)
{
    write(samplePath(sample), paper);
    const int count = pages();
    for (int page = firstTemplate(); page <= count; ++page)
        expectTrueRulers(paths(page));
}

// The printer's way is not the PDF's: it knows margins and resolutions of its own.
TEST_P(EachSheet, RulersAreTrueOnAPrinterToo)
{
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(output);
    printer.setPageLayout(layoutOf(paper == QStringLiteral("a4") ? Paper::A4 : Paper::Letter));
    ASSERT_TRUE(drawSheet({setup, assess(setup).value(), 6.0, QDate(2026, 5, 1)}, printer));
    const int count = pages();
    for (int page = firstTemplate(); page <= count; ++page)
        expectTrueRulers(paths(page));
}

// Oracle: the setup file's own coordinates, forward up and left to the left of the datum. Rings of
// 4 mm are the airframe's holes, squares of 4 mm the bay's, the ring of 6 mm is the datum.
TEST_P(EachSheet, HolesLieWhereTheyAreDrilled)
{
    write(samplePath(sample), paper);
    const int count = pages();
    std::vector<bool> seen(2 * setup.mounts.points.size(), false);
    for (int page = firstTemplate(); page <= count; ++page) {
        const std::vector<Path> drawn = paths(page);
        const std::vector<QPointF> datums = centres(drawn, true, 6.0);
        ASSERT_EQ(datums.size(), 1U);
        const std::vector<QPointF> rings = centres(drawn, true, 4.0);
        const std::vector<QPointF> squares = centres(drawn, false, 4.0);
        for (std::size_t k = 0; k < setup.mounts.points.size(); ++k) {
            const MountPoint& point = setup.mounts.points[k];
            const Triple anchor = anchorByDefinition(setup.mounts, point);
            if (hasPointAt(rings, datums[0] + QPointF(-anchor[1], -anchor[0])))
                seen[2 * k] = true;
            if (hasPointAt(squares, datums[0] + QPointF(-point.bay_mm[1], -point.bay_mm[0])))
                seen[2 * k + 1] = true;
        }
        EXPECT_LE(rings.size(), setup.mounts.points.size());
        EXPECT_LE(squares.size(), setup.mounts.points.size());
    }
    EXPECT_TRUE(std::all_of(seen.begin(), seen.end(), [](bool hole) { return hole; }));
    const QString all = text(firstTemplate(), count);
    for (std::size_t k = 1; k <= setup.mounts.points.size(); ++k)
        for (const char* plate : {"A", "B"})
            EXPECT_TRUE(all.contains(QLatin1String(plate) + QString::number(k)));
}

TEST_P(EachSheet, NeedsNoColour)
{
    write(samplePath(sample), paper);
    const int count = pages();
    for (int page = 1; page <= count; ++page) {
        ASSERT_EQ(
            runTool(QStringLiteral("pdftoppm"),
                    {QStringLiteral("-r"), QStringLiteral("60"), QStringLiteral("-f"),
                     QString::number(page), QStringLiteral("-l"), QString::number(page), output}),
            0);
        const QImage image = QImage::fromData(out);
        ASSERT_FALSE(image.isNull());
        EXPECT_TRUE(image.allGray()) << page;
        const QRgb paperWhite = qRgb(255, 255, 255);
        EXPECT_EQ(image.pixel(3, 3), paperWhite);
        int inked = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x)
                inked += image.pixel(x, y) != paperWhite;
        EXPECT_GT(inked, 1000) << page;
    }
}

INSTANTIATE_TEST_SUITE_P(Samples, EachSheet,
                         testing::Combine(testing::ValuesIn(kSampleNames),
                                          testing::Values("a4", "letter")));

// Oracle: the paper of the shops, and the decimal sign of the language.
TEST_F(Sheet, FollowsTheLocale)
{
    struct Case {
        const char* locale;
        const char* paper;
        const char* length;
    };
    for (const auto& [locale, paper, length] :
         {Case{"en_US.UTF-8", "(letter)", "20.0 mm"}, Case{"de_DE.UTF-8", "(A4)", "20,0 mm"}}) {
        environment.insert(QStringLiteral("LC_ALL"), QLatin1String(locale));
        ASSERT_EQ(run({QStringLiteral("sheet"), samplePath("reedbed"), QStringLiteral("--output"),
                       output, QStringLiteral("--force")}),
                  0);
        pages();
        EXPECT_TRUE(out.contains(paper)) << out.constData();
        EXPECT_TRUE(text().contains(QLatin1String(length))) << locale;
    }
}

TEST_F(Sheet, ALongNameLeavesThePageNumberItsRoom)
{
    stillbay::Setup named = sampleSetup("reedbed");
    named.name = std::string(100, 'W') + " <b>&amp;</b>";
    write(craftFile(named), QStringLiteral("a4"));
    const int count = pages();
    EXPECT_TRUE(text(1, 1).contains(QStringLiteral("W... page 1 of %1").arg(count)));
    EXPECT_TRUE(text(1, 1).contains(QStringLiteral("<b>&amp;</b>")));
}

TEST_F(Sheet, OverridesAPlatformThatNeedsADisplay)
{
    environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("xcb"));
    write(samplePath("reedbed"), QStringLiteral("a4"));
    EXPECT_GT(pages(), 2);
}

TEST_F(Sheet, GivesTheTableAloneWhereATemplateWouldTakeTooMuchPaper)
{
    stillbay::Setup wide = sampleSetup("quarry");
    for (MountPoint& point : wide.mounts.points) {
        point.bay_mm[0] *= 20.0;
        point.anchor_mm = {point.bay_mm[0] + 26.0, point.bay_mm[1] + 14.0, point.bay_mm[2] + 7.0};
    }
    const QString craft = craftFile(wide);
    ASSERT_EQ(run({QStringLiteral("sheet"), craft, QStringLiteral("--output"), output}), 0)
        << err.constData();
    const QString all = text();
    EXPECT_TRUE(all.contains(QStringLiteral("too far apart for a template"))) << qPrintable(all);
    EXPECT_FALSE(all.contains(QStringLiteral("measure both rulers"), Qt::CaseInsensitive));
}

// Oracle: the assessment. What must not fly is told before anything is cut, on every page, and
// nothing of it is called clean.
TEST_F(Sheet, OfACraftThatMustNotFlySaysSoBeforeAnythingIsCut)
{
    stillbay::Setup heavy = sampleSetup("saltmarsh");
    heavy.bay.travel_mm = 0.3;
    const Assessment answer = assess(heavy).value();
    ASSERT_FALSE(answer.status.flyable);
    const QString craft = craftFile(heavy);
    ASSERT_EQ(run({QStringLiteral("sheet"), craft, QStringLiteral("--output"), output}), 0)
        << err.constData();
    const QString all = text();
    const qsizetype told = all.indexOf(QStringLiteral("DO NOT FLY:"));
    ASSERT_GE(told, 0) << qPrintable(all);
    EXPECT_LT(told, all.indexOf(QStringLiteral("CUT LENGTH")));
    EXPECT_TRUE(all.contains(displayText(answer.status.violated.front().text)));
    EXPECT_FALSE(all.contains(QStringLiteral("(clean)")));
    EXPECT_EQ(all.count(QStringLiteral("DO NOT FLY · ")), all.count(QStringLiteral("page ")));
}

TEST_F(Sheet, LeavesTheOldFileWhenThereIsNoAnswer)
{
    stillbay::Setup buckled = sampleSetup("reedbed");
    buckled.tube.hardness_shore_a = 20.0;
    buckled.mounts.free_length_mm = 60.0;
    buckled.mounts.stretch = 1.0;
    buckled.bay.parts[0].mass_g = 3000.0;
    for (MountPoint& point : buckled.mounts.points)
        point.elevation_deg = -85.0;
    const QString craft = craftFile(buckled);
    QFile old(output);
    ASSERT_TRUE(old.open(QIODevice::WriteOnly));
    old.write("old");
    old.close();
    EXPECT_EQ(run({QStringLiteral("sheet"), craft, QStringLiteral("--output"), output,
                   QStringLiteral("--force")}),
              3);
    EXPECT_EQ(err.count('\n'), 1) << err.constData();
    EXPECT_EQ(fileBytes(output), "old");
}

TEST_F(Sheet, SaysWhereItCannotWrite)
{
    const QString inTheWay = folder.filePath(QStringLiteral("folder.pdf"));
    ASSERT_TRUE(QDir().mkdir(inTheWay));
    for (const QString& bad : {inTheWay, folder.filePath(QStringLiteral("missing/sheet.pdf"))}) {
        EXPECT_EQ(run({QStringLiteral("sheet"), samplePath("reedbed"), QStringLiteral("--output"),
                       bad, QStringLiteral("--force")}),
                  1);
        EXPECT_TRUE(err.startsWith("stillbay: ")) << err.constData();
        EXPECT_TRUE(err.endsWith(bad.toUtf8() + '\n')) << err.constData();
        EXPECT_EQ(err.count('\n'), 1) << err.constData();
    }
}

}  // namespace
}  // namespace stillbay::ui
