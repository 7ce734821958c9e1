// SPDX-License-Identifier: MIT
#include "ui/findings/step_text.h"

#include "ui/widgets/display_text.h"

#include <QLocale>
#include <QObject>
#include <QStringList>

namespace stillbay::ui {
namespace {

QString pixels(double wobble_px)
{
    return QLocale().toString(wobble_px, 'g', wobble_px < 1.0 ? 2 : 3);
}

}  // namespace

QString stepWobbleText(const Suggestion& suggestion, double before_px)
{
    return QObject::tr("%1 → %2 px").arg(pixels(before_px), pixels(suggestion.after_px));
}

QString stepGainText(const Suggestion& suggestion, double before_px)
{
    if (suggestion.mends)
        return QObject::tr("may fly then");
    return QObject::tr("−%1 %").arg(
        QLocale().toString(100.0 * (1.0 - suggestion.after_px / before_px), 'f', 0));
}

QString stepDangerText(const Suggestion& suggestion)
{
    QStringList dangers;
    for (const Warning& warning : suggestion.newWarnings)
        if (const Phrase danger = dangerText(warning); !danger.pattern.empty())
            dangers << displayText(danger);
    if (!suggestion.mayFly && dangers.isEmpty())
        dangers << QObject::tr("it still must not fly");
    if (suggestion.movedTo)
        dangers << displayText(movedText(*suggestion.movedTo));
    return dangers.isEmpty() ? QString()
                             : QObject::tr("but %1").arg(dangers.join(QObject::tr(", ")));
}

QString stepChangeText(const Suggestion& suggestion, double before_px)
{
    QStringList parts{stepWobbleText(suggestion, before_px)};
    if (suggestion.mends)
        parts << stepGainText(suggestion, before_px);
    if (const QString danger = stepDangerText(suggestion); !danger.isEmpty())
        parts << danger;
    return parts.join(QObject::tr(", "));
}

}  // namespace stillbay::ui
