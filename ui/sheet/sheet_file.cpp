// SPDX-License-Identifier: MIT
#include "ui/sheet/sheet_file.h"

#include "ui/document/safe_write.h"
#include "ui/widgets/language.h"

#include <QFile>
#include <QFontDatabase>
#include <QGuiApplication>

#include <csignal>

namespace stillbay::ui {

Result<void> saveSheet(const BuildSheet& sheet, Paper paper, const QString& path)
{
    return safeWrite(path, sheetPdf(sheet, paper));
}

Result<void> saveSheetWithoutDisplay(int argc, char** argv, BuildSheet sheet,
                                     std::optional<Paper> paper, const std::string& path)
{
    std::signal(SIGXFSZ, SIG_IGN);  // a file that grows too large is an error, not the end
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication application(argc, argv);
    const Translations translations;
    if (QFontDatabase::families().isEmpty())
        return fail(Errc::BadInput, phrase("no font is installed to write the sheet with"));
    sheet.date = QDate::currentDate();
    return saveSheet(sheet, paper.value_or(usualPaper(QLocale())), QFile::decodeName(path.c_str()));
}

}  // namespace stillbay::ui
