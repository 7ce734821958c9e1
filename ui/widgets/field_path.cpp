// SPDX-License-Identifier: MIT
#include "ui/widgets/field_path.h"

#include <QVariant>
#include <QWidget>

namespace stillbay::ui {
namespace {

constexpr const char* kFieldPath = "fieldPath";

}  // namespace

void setFieldPath(QWidget& widget, const QString& path)
{
    widget.setProperty(kFieldPath, path);
}

QString fieldPathAt(const QWidget* widget, const QWidget* root)
{
    for (; widget && widget != root; widget = widget->parentWidget())
        if (const QVariant path = widget->property(kFieldPath); path.isValid())
            return path.toString();
    return {};
}

}  // namespace stillbay::ui
