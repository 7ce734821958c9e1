// SPDX-License-Identifier: MIT
#include "ui/recordings/sensor_pane.h"

#include "ui/widgets/number_box.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>

namespace stillbay::ui {

SensorPane::SensorPane(QWidget* parent)
    : QWidget(parent),
      m_isKnown(new QCheckBox(tr("Sensor at (forward, left, up)"))),
      m_place{new NumberBox, new NumberBox, new NumberBox},
      m_mass(new NumberBox),
      m_axes(new QLineEdit)
{
    m_isKnown->setToolTip(
        tr("Ticked: where the sensor sat is known, measured from the middle of "
           "the centre plate. Otherwise it is taken to sit at the camera."));
    const QString names[] = {tr("Sensor, forward"), tr("Sensor, left"), tr("Sensor, up")};
    auto* const place = new QHBoxLayout;
    for (std::size_t k = 0; k < m_place.size(); ++k) {
        m_place[k]->setAccessibleName(names[k]);
        m_place[k]->setUnit(QStringLiteral("mm"));
        m_place[k]->setRange(-2000.0, 2000.0);
        place->addWidget(m_place[k]);
        connect(m_place[k], &NumberBox::valueChanged, this, &SensorPane::tell);
    }
    place->addStretch(1);
    m_mass->setAccessibleName(tr("Mass of the sensor"));
    m_mass->setToolTip(tr("With what holds it, where it is no part of the craft."));
    m_mass->setUnit(QStringLiteral("g"));
    m_mass->setRange(0.0, 2000.0);
    m_axes->setAccessibleName(tr("Where the sensor's axes point"));
    m_axes->setToolTip(
        tr("x:y:z where it lies as the craft does; -y:x:z where its x points to the "
           "right and its y ahead. Empty: not known."));
    m_axes->setPlaceholderText(tr("not known"));
    m_axes->setMaxLength(12);
    m_axes->setMaximumWidth(14 * fontMetrics().averageCharWidth());
    auto* const other = new QHBoxLayout;
    other->addWidget(m_mass);
    auto* const axes = new QLabel(tr("axes"));
    axes->setBuddy(m_axes);
    other->addWidget(axes);
    other->addWidget(m_axes);
    other->addStretch(1);
    auto* const grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->addWidget(m_isKnown, 0, 0);
    grid->addLayout(place, 0, 1);
    grid->addWidget(new QLabel(tr("it weighs")), 1, 0, Qt::AlignRight);
    grid->addLayout(other, 1, 1);
    grid->setColumnStretch(1, 1);
    connect(m_isKnown, &QCheckBox::toggled, this, &SensorPane::tell);
    connect(m_mass, &NumberBox::valueChanged, this, &SensorPane::tell);
    connect(m_axes, &QLineEdit::editingFinished, this, &SensorPane::tell);
    setSensor({});
}

void SensorPane::setSensor(const NamedRecording& recording)
{
    const QSignalBlocker quiet(this), quietKnown(m_isKnown);
    m_isKnown->setChecked(recording.sensor_mm.has_value());
    const Triple place = recording.sensor_mm.value_or(Triple{});
    for (std::size_t k = 0; k < m_place.size(); ++k) {
        m_place[k]->setEnabled(recording.sensor_mm.has_value());
        m_place[k]->show(place[k]);
    }
    m_mass->show(recording.sensor_mass_g.value_or(0.0));
    m_axes->setText(QString::fromStdString(recording.sensor_axes));
}

void SensorPane::tell()
{
    NamedRecording sensor;
    if (m_isKnown->isChecked())
        sensor.sensor_mm = Triple{m_place[0]->value(), m_place[1]->value(), m_place[2]->value()};
    if (m_mass->value() > 0.0)
        sensor.sensor_mass_g = m_mass->value();
    sensor.sensor_axes = m_axes->text().trimmed().toStdString();
    emit changed(sensor);
}

}  // namespace stillbay::ui
