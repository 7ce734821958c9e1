// SPDX-License-Identifier: MIT
#include "ui/sheet/sheet_file.h"

#include "ui/document/safe_write.h"
#include "ui/widgets/language.h"

#include <QFontDatabase>
#include <QGuiApplication>

#include <string_view>

namespace stillbay::ui {

Result<void> saveSheet(const BuildSheet& sheet, Paper paper, const QString& path)
{
    return safeWrite(path, sheetPdf(sheet, paper));
}

Result<void> saveSheetWithoutDisplay(int argc, char** argv, BuildSheet sheet,
                                     std::optional<Paper> paper, const std::string& path,
                                     const WriteOptions& options)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication application(argc, argv);
    const Translations translations;
    if (QFontDatabase::families().isEmpty())
        return fail(Errc::BadInput, phrase("no font is installed to write the sheet with"));
    sheet.date = QDate::currentDate();
    const QByteArray pdf = sheetPdf(sheet, paper.value_or(usualPaper(QLocale())));
    sweepBeside(path);
    return writeWhole(path, {pdf.constData(), static_cast<std::size_t>(pdf.size())}, options);
}

}  // namespace stillbay::ui
