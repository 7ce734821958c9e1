// SPDX-License-Identifier: MIT
// What an installed Stillbay brings to a desktop and to a terminal.
#include "tests/ui/program_fixture.h"
#include "tests/ui/samples.h"
#include "ui/window/identity.h"

#include <QDirIterator>
#include <QImage>
#include <QPainter>
#include <QRegularExpression>
#include <QSettings>
#include <QStandardPaths>
#include <QSvgRenderer>
#include <QXmlStreamReader>

namespace stillbay::ui {
namespace {

struct Installed : Program {
    Installed()
    {
        EXPECT_EQ(runTool(QStringLiteral(STILLBAY_CMAKE),
                          {QStringLiteral("--install"), QStringLiteral(STILLBAY_BUILD_DIR),
                           QStringLiteral("--prefix"), prefix}),
                  0)
            << err.constData();
    }

    QString share(const QString& path) const { return prefix + QStringLiteral("/share/") + path; }

    // All texts of one element, and the values of one attribute of it.
    static QStringList textsOf(const QString& path, const QString& element)
    {
        QStringList found;
        const QByteArray bytes = fileBytes(path);
        QXmlStreamReader xml(bytes);
        while (!xml.atEnd()) {
            xml.readNext();
            if (xml.isStartElement() && xml.name() == element) {
                for (const auto& attribute : xml.attributes())
                    found << attribute.value().toString();
                found << xml.readElementText(QXmlStreamReader::SkipChildElements).simplified();
            }
        }
        EXPECT_FALSE(xml.hasError()) << qPrintable(path) << qPrintable(xml.errorString());
        return found;
    }

    const QString prefix = folder.filePath(QStringLiteral("usr"));
    const QString desktop = share(QStringLiteral("applications/%1.desktop").arg(kDesktopId));
    const QString mime = share(QStringLiteral("mime/packages/%1.xml").arg(kDesktopId));
    const QString metainfo = share(QStringLiteral("metainfo/%1.metainfo.xml").arg(kDesktopId));
    const QString icon =
        share(QStringLiteral("icons/hicolor/scalable/apps/%1.svg").arg(kDesktopId));
    const QString manual = share(QStringLiteral("man/man1/stillbay.1"));
};

TEST_F(Installed, HasEachFileInItsPlaceAndNothingElse)
{
    QStringList found;
    for (QDirIterator files(prefix, QDir::Files, QDirIterator::Subdirectories); files.hasNext();)
        found << files.next();
    QStringList wanted{
        prefix + QStringLiteral("/bin/stillbay"),     desktop, mime, metainfo, icon, manual,
        share(QStringLiteral("doc/stillbay/LICENSE"))};
    found.sort();
    wanted.sort();
    EXPECT_EQ(found, wanted) << qPrintable(found.join(u'\n'));
    EXPECT_EQ(runTool(prefix + QStringLiteral("/bin/stillbay"), {QStringLiteral("--version")}), 0);
}

TEST_F(Installed, EntryMimeTypeAndMetainfoAgree)
{
    const QSettings entry(desktop, QSettings::IniFormat);
    const auto value = [&entry](const char* key) {
        return entry.value(QStringLiteral("Desktop Entry/") + QLatin1String(key)).toString();
    };
    EXPECT_EQ(value("Exec"), QStringLiteral("stillbay %f"));
    EXPECT_EQ(value("Icon"), kDesktopId);
    const QStringList types = textsOf(mime, QStringLiteral("mime-type"));
    ASSERT_FALSE(types.isEmpty());
    EXPECT_TRUE(fileBytes(desktop).contains("MimeType=" + types.front().toUtf8() + ";\n"));
    EXPECT_EQ(types.front(), QStringLiteral("application/vnd.stillbay+json"));
    EXPECT_EQ(textsOf(mime, QStringLiteral("glob")).front(), QStringLiteral("*.stillbay"));
    EXPECT_EQ(textsOf(mime, QStringLiteral("sub-class-of")).front(),
              QStringLiteral("application/json"));
    EXPECT_EQ(textsOf(metainfo, QStringLiteral("id")), QStringList{kDesktopId});
    EXPECT_TRUE(textsOf(metainfo, QStringLiteral("launchable"))
                    .contains(kDesktopId + QStringLiteral(".desktop")));
    EXPECT_TRUE(textsOf(metainfo, QStringLiteral("mediatype")).contains(types.front()));
}

TEST_F(Installed, IconIsDrawnAndIsTheWindowsOwn)
{
    QSvgRenderer drawing(icon);
    ASSERT_TRUE(drawing.isValid());
    for (const int side : {16, 64}) {
        QImage image(side, side, QImage::Format_ARGB32_Premultiplied);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        drawing.render(&painter);
        painter.end();
        EXPECT_EQ(image.pixelColor(0, 0).alpha(), 0);
        EXPECT_EQ(image.pixelColor(side / 2, side / 2).alpha(), 255);
        EXPECT_EQ(programIcon().pixmap(side, side).toImage().convertToFormat(image.format()),
                  image);
    }
}

// All words of a text that look like a long option.
QStringList optionsIn(const QString& text)
{
    static const QRegularExpression kOption(QStringLiteral("--[a-z][a-z-]*"));
    QStringList found;
    for (const auto& match : kOption.globalMatch(text))
        found << match.captured();
    found.sort();
    found.removeDuplicates();
    return found;
}

TEST_F(Installed, ManualTellsTheCommandsAndOptionsOfTheHelp)
{
    ASSERT_EQ(run({QStringLiteral("--help")}), 0);
    const QString help = QString::fromUtf8(out);
    QString page =
        QString::fromUtf8(fileBytes(manual)).replace(QStringLiteral("\\-"), QStringLiteral("-"));
    EXPECT_EQ(optionsIn(page), optionsIn(help));
    static const QRegularExpression kCommand(
        QStringLiteral("\n  stillbay ([a-z]+) (?:FILE|RECORDING|CLIP)"));
    QString suggestions;
    int commands = 0;
    for (const auto& match : kCommand.globalMatch(help)) {
        ++commands;
        EXPECT_TRUE(page.contains(QStringLiteral(".SS %1\n").arg(match.captured(1))))
            << qPrintable(match.captured(1));
        ASSERT_EQ(run({match.captured(1), QStringLiteral("--help")}), 0);
        suggestions += QString::fromUtf8(out);
    }
    EXPECT_EQ(commands, 9);
    EXPECT_EQ(optionsIn(suggestions + QStringLiteral(" --version")), optionsIn(help));
    ASSERT_EQ(run({QStringLiteral("--version")}), 0);
    const QString version = QString::fromUtf8(out).simplified().section(u' ', 1);
    EXPECT_TRUE(page.contains(QStringLiteral("\"Stillbay %1\"").arg(version)));
}

TEST_F(Installed, ManualIsCleanTroff)
{
    const QString groff = QStandardPaths::findExecutable(QStringLiteral("groff"));
    if (groff.isEmpty())
        GTEST_SKIP() << "groff is not installed";
    EXPECT_EQ(runTool(groff, {QStringLiteral("-man"), QStringLiteral("-ww"), QStringLiteral("-z"),
                              QStringLiteral("-Tutf8"), manual}),
              0);
    EXPECT_TRUE(err.isEmpty()) << err.constData();
}

}  // namespace
}  // namespace stillbay::ui
