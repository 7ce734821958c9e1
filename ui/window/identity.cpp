// SPDX-License-Identifier: MIT
#include "ui/window/identity.h"

#include <QPainter>
#include <QPixmap>
#include <QSvgRenderer>

// The macro wants a function outside any namespace.
static void loadIcon()
{
    Q_INIT_RESOURCE(identity);
}

namespace stillbay::ui {

QIcon programIcon()
{
    loadIcon();
    QSvgRenderer drawing(QStringLiteral(":/identity/icon.svg"));
    QIcon icon;
    for (const int side : {16, 24, 32, 48, 64, 128, 256}) {
        QPixmap pixmap(side, side);
        pixmap.fill(Qt::transparent);
        QPainter painter(&pixmap);
        drawing.render(&painter);
        painter.end();
        icon.addPixmap(pixmap);
    }
    return icon;
}

}  // namespace stillbay::ui
