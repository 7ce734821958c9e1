// SPDX-License-Identifier: MIT
#include "ui/findings/html.h"

#include "ui/widgets/display_text.h"

namespace stillbay::ui {

QString escaped(const std::string& text)
{
    return QString::fromStdString(text).toHtmlEscaped();
}

QString escaped(const Phrase& phrase)
{
    return displayText(phrase).toHtmlEscaped();
}

QString headingHtml(const QString& text)
{
    return QStringLiteral("<p style='margin-top:12px;margin-bottom:2px'><b>%1</b></p>").arg(text);
}

QString paragraphHtml(const QString& text)
{
    return QStringLiteral("<p style='margin-top:2px;margin-bottom:5px'>%1</p>").arg(text);
}

QString listHtml(const QStringList& items)
{
    QString html = QStringLiteral("<ul style='margin-left:14px;-qt-list-indent:0'>");
    for (const QString& item : items)
        html += QStringLiteral("<li style='margin-bottom:4px'>%1</li>").arg(item);
    return html + QStringLiteral("</ul>");
}

}  // namespace stillbay::ui
