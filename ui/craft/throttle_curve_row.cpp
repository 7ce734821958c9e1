// SPDX-License-Identifier: MIT
#include "ui/craft/throttle_curve_row.h"

#include "core/setup/sources.h"
#include "ui/widgets/field_path.h"
#include "ui/widgets/quantity.h"

#include <QLabel>
#include <QObject>
#include <QPushButton>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

QString curveText(const ThrottleCurve& curve)
{
    QStringList pairs;
    for (const auto& [throttle, duty] : curve)
        pairs << QObject::tr("%1 → %2 %").arg(percentNumber(throttle), percentNumber(duty));
    return QObject::tr("Throttle curve, throttle → duty: %1").arg(pairs.join(QStringLiteral(", ")));
}

}  // namespace

QWidget* throttleCurveRow(Document& document)
{
    auto* const row = new QWidget;
    setFieldPath(*row, QStringLiteral("drive.throttle_curve"));
    auto* const layout = new QVBoxLayout(row);
    layout->setContentsMargins(0, 0, 0, 0);
    auto* const text = new QLabel;
    text->setWordWrap(true);
    layout->addWidget(text);
    auto* const remove = new QPushButton(QObject::tr("Remove the throttle curve"));
    remove->setToolTip(QObject::tr("The duty is the throttle again, at every throttle."));
    layout->addWidget(remove, 0, Qt::AlignLeft);
    const auto show = [&document, row, text] {
        const ThrottleCurve& curve = document.setup().drive.throttle_curve;
        text->setText(curveText(curve));
        if (row->isHidden() != curve.empty())
            row->setVisible(!curve.empty());
    };
    if (document.setup().drive.throttle_curve.empty())
        row->hide();  // not shown before it has its place
    text->setText(curveText(document.setup().drive.throttle_curve));
    QObject::connect(&document, &Document::setupChanged, row, show);
    QObject::connect(remove, &QPushButton::clicked, row, [&document] {
        (void)document.edit(QObject::tr("remove the throttle curve"), {}, [](Setup& setup) {
            setup.drive.throttle_curve.clear();
            dropSource(setup, "drive.throttle_curve");
        });
    });
    return row;
}

}  // namespace stillbay::ui
