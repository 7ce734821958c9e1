// SPDX-License-Identifier: MIT
#include "ui/widgets/source_text.h"

#include "core/base/units.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/plain_number.h"

#include <QObject>

namespace stillbay::ui {
namespace {

QString originText(Origin from)
{
    switch (from) {
        case Origin::Typical:
            return QObject::tr("A typical value, not yours yet: type it, or your own.");
        case Origin::Estimated:
            return QObject::tr("An estimate, not yours yet: type it, or your own.");
        case Origin::Label:
            return QObject::tr("Read off a label or a data sheet.");
        case Origin::Measured:
            return QObject::tr("Measured.");
    }
    return {};
}

QString paragraph(const QString& text)
{
    return QStringLiteral("<p>%1</p>").arg(text.toHtmlEscaped());
}

}  // namespace

QString sourceMark(const Source& source)
{
    switch (source.from) {
        case Origin::Typical:
            return QObject::tr("typical");
        case Origin::Estimated:
            return QObject::tr("estimated");
        case Origin::Label:
        case Origin::Measured:
            break;
    }
    return {};
}

QString sourceText(const Source& source)
{
    QString text = paragraph(originText(source.from));
    if (!source.note.empty())
        text += paragraph(QObject::tr("From: %1").arg(displayText(source.note.c_str())));
    if (source.spread)
        text += paragraph(QObject::tr("Such values differ by %1.").arg(spreadText(*source.spread)));
    return text;
}

QString spreadText(double spread)
{
    return QObject::tr("±%1 %").arg(plainNumber(kPercent * spread, 2));
}

}  // namespace stillbay::ui
