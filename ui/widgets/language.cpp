// SPDX-License-Identifier: MIT
#include "ui/widgets/language.h"

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>

// Outside of any namespace, as Qt wants it: a static library would drop them.
static void keepTexts()
{
    Q_INIT_RESOURCE(translations);
}

namespace stillbay::ui {

Translations::Translations()
{
    keepTexts();
    const QString separator = QStringLiteral("_");
    if (m_ours.load(QLocale(), QStringLiteral("stillbay"), separator, QStringLiteral(":/i18n")))
        QCoreApplication::installTranslator(&m_ours);
    if (m_qts.load(QLocale(), QStringLiteral("qtbase"), separator,
                   QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
        QCoreApplication::installTranslator(&m_qts);
}

}  // namespace stillbay::ui
