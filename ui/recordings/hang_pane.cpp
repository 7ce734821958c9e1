// SPDX-License-Identifier: MIT
#include "ui/recordings/hang_pane.h"

#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"

#include <QGridLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

constexpr double kMostHung = 20000.0;  // g and mm

NumberBox* boxOf(const QString& name, const QString& unit)
{
    auto* const box = new NumberBox;
    box->setAccessibleName(name);
    box->setUnit(unit);
    box->setRange(0.0, kMostHung);
    return box;
}

}  // namespace

HangPane::HangPane(QWidget* parent)
    : QWidget(parent),
      m_ruler(boxOf(tr("What the ruler is read to"), QStringLiteral("mm"))),
      m_scale(boxOf(tr("What the scale shows to"), QStringLiteral("g")))
{
    auto* const title = new QLabel(tr("Hang test"));
    QFont bold = font();
    bold.setBold(true);
    title->setFont(bold);
    auto* const how = new QuietLabel(
        tr("Put two marks on a piece of the tube, hang it up, and measure between the marks: "
           "first with nothing on it, then with one mass after the other. One mass will do, two "
           "or three show whether they agree."));
    auto* const grid = new QGridLayout;
    grid->setHorizontalSpacing(10);
    const QString headings[] = {tr("Mass"), tr("Between the marks without it"), tr("and with it")};
    for (int column = 0; column < 3; ++column)
        grid->addWidget(new QLabel(headings[column]), 0, column + 1);
    for (std::size_t k = 0; k < m_rows.size(); ++k) {
        const int row = static_cast<int>(k) + 1;
        m_rows[k] = {boxOf(tr("Mass %1 of the hang test").arg(row), QStringLiteral("g")),
                     boxOf(tr("Length without mass %1").arg(row), QStringLiteral("mm")),
                     boxOf(tr("Length with mass %1").arg(row), QStringLiteral("mm"))};
        grid->addWidget(new QLabel(QString::number(row)), row, 0);
        int column = 1;
        for (NumberBox* box : {m_rows[k].mass, m_rows[k].free, m_rows[k].loaded}) {
            box->setSpecialValueText(QStringLiteral("–"));  // at zero: not filled
            grid->addWidget(box, row, column++);
            connect(box, &NumberBox::valueChanged, this, &HangPane::changed);
        }
    }
    grid->setColumnStretch(4, 1);
    const HangReadings usual;
    m_ruler->show(usual.length_mm);
    m_scale->show(usual.mass_g);
    auto* const accuracy = new QHBoxLayout;
    accuracy->addWidget(new QLabel(tr("Ruler read to")));
    accuracy->addWidget(m_ruler);
    accuracy->addSpacing(12);
    accuracy->addWidget(new QLabel(tr("scale shows to")));
    accuracy->addWidget(m_scale);
    accuracy->addStretch(1);
    for (NumberBox* box : {m_ruler, m_scale})
        connect(box, &NumberBox::valueChanged, this, &HangPane::changed);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(12, 12, 12, 12);
    layout->setSpacing(10);
    layout->addWidget(title);
    layout->addWidget(how);
    layout->addLayout(grid);
    layout->addLayout(accuracy);
    layout->addStretch(1);
}

std::vector<HungMass> HangPane::masses() const
{
    std::vector<HungMass> masses;
    for (const Row& row : m_rows)
        if (row.mass->value() > 0.0 && row.free->value() > 0.0 && row.loaded->value() > 0.0)
            masses.push_back({row.mass->value(), row.free->value(), row.loaded->value()});
    return masses;
}

HangReadings HangPane::readings() const
{
    HangReadings readings;
    readings.length_mm = m_ruler->value();
    readings.mass_g = m_scale->value();
    return readings;
}

}  // namespace stillbay::ui
