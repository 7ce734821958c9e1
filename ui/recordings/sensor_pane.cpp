// SPDX-License-Identifier: MIT
#include "ui/recordings/sensor_pane.h"

#include "ui/widgets/number_box.h"
#include "ui/widgets/plain_number.h"

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>

#include <algorithm>

namespace stillbay::ui {

SensorPane::SensorPane(QWidget* parent)
    : QWidget(parent),
      m_isKnown(new QCheckBox(tr("Sensor at (forward, left, up)"))),
      m_place{new NumberBox, new NumberBox, new NumberBox},
      m_mass(new NumberBox),
      m_axes(new QLineEdit),
      m_arm(new QComboBox)
{
    m_isKnown->setToolTip(
        tr("Ticked: where the sensor sat is known, measured from the middle of "
           "the centre plate. Otherwise it is taken to sit at the camera, or, on the airframe, at "
           "that middle."));
    dress(m_place, {tr("Sensor, forward"), tr("Sensor, left"), tr("Sensor, up")}, -2000.0, 2000.0);
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
    m_arm->setAccessibleName(tr("Tapped arm"));
    m_arm->setToolTip(tr("Which of the airframe's arms was tapped."));
    m_arm->setSizeAdjustPolicy(QComboBox::AdjustToContents);

    auto* const place = new QHBoxLayout;
    auto* const mass = new QHBoxLayout;
    for (NumberBox* box : m_place)
        place->addWidget(box);
    mass->addWidget(m_mass);
    QLabel* const axes = labelOf(tr("axes"), *m_axes);
    mass->addWidget(axes);
    mass->addWidget(m_axes);
    for (QHBoxLayout* row : {place, mass})
        row->addStretch(1);
    QLabel* const weighs = labelOf(tr("it weighs"), *m_mass);
    QLabel* const arm = labelOf(tr("Tapped arm"), *m_arm);
    auto* const grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->addWidget(m_isKnown, 0, 0);
    grid->addLayout(place, 0, 1);
    grid->addWidget(weighs, 1, 0, Qt::AlignRight);
    grid->addLayout(mass, 1, 1);
    grid->addWidget(arm, 3, 0);
    grid->addWidget(m_arm, 3, 1, Qt::AlignLeft);
    grid->setColumnStretch(1, 1);
    m_ofPlace.assign(m_place.begin(), m_place.end());
    m_ofPlace.push_back(m_isKnown);
    m_ofMass = {m_mass, weighs};
    m_ofAxes = {axes, m_axes};
    m_ofArm = {arm, m_arm};
    connect(m_isKnown, &QCheckBox::toggled, this, &SensorPane::tell);
    connect(m_mass, &NumberBox::valueChanged, this, &SensorPane::tell);
    connect(m_axes, &QLineEdit::editingFinished, this, &SensorPane::tell);
    connect(m_arm, &QComboBox::activated, this, &SensorPane::tell);
    setSensor({});
}

QLabel* SensorPane::labelOf(const QString& text, QWidget& buddy)
{
    auto* const label = new QLabel(text);
    label->setBuddy(&buddy);
    return label;
}

void SensorPane::dress(const Boxes& boxes, const std::array<QString, 3>& names, double least,
                       double most)
{
    for (std::size_t k = 0; k < boxes.size(); ++k) {
        boxes[k]->setAccessibleName(names[k]);
        boxes[k]->setUnit(QStringLiteral("mm"));
        boxes[k]->setRange(least, most);
        connect(boxes[k], &NumberBox::valueChanged, this, &SensorPane::tell);
    }
}

void SensorPane::showRows(RecordingKind kind)
{
    const auto showAll = [](const std::vector<QWidget*>& widgets, bool isShown) {
        for (QWidget* widget : widgets)
            widget->setVisible(isShown);
    };
    const bool isPluck = kind == RecordingKind::Pluck;
    showAll(m_ofPlace, isPluck || kind == RecordingKind::Sweep);
    showAll(m_ofMass, isPluck);
    showAll(m_ofAxes, isPluck || kind == RecordingKind::Sweep);
    showAll(m_ofArm, kind == RecordingKind::Tap);
}

void SensorPane::setSensor(const NamedRecording& recording, const std::vector<Arm>& arms)
{
    const QSignalBlocker quiet(this), quietKnown(m_isKnown);
    showRows(recording.kind);
    m_isKnown->setChecked(recording.sensor_mm.has_value());
    const Triple place = recording.sensor_mm.value_or(Triple{});
    for (std::size_t k = 0; k < m_place.size(); ++k) {
        m_place[k]->setEnabled(recording.sensor_mm.has_value());
        m_place[k]->show(place[k]);
    }
    m_mass->show(recording.sensor_mass_g.value_or(0.0));
    m_axes->setText(QString::fromStdString(recording.sensor_axes));
    m_arm->clear();
    for (std::size_t k = 0; k < arms.size(); ++k)
        m_arm->addItem(tr("arm %1, at %2°", "number and azimuth")
                           .arg(k + 1)
                           .arg(plainNumber(arms[k].azimuth_deg, 4)));
    if (m_arm->count() > 0)
        m_arm->setCurrentIndex(
            std::clamp(static_cast<int>(recording.arm.value_or(1.0)) - 1, 0, m_arm->count() - 1));
}

void SensorPane::tell()
{
    NamedRecording sensor;
    if (m_isKnown->isChecked())
        sensor.sensor_mm = Triple{m_place[0]->value(), m_place[1]->value(), m_place[2]->value()};
    if (m_mass->value() > 0.0)
        sensor.sensor_mass_g = m_mass->value();
    sensor.sensor_axes = m_axes->text().trimmed().toStdString();
    if (m_arm->currentIndex() > 0)  // none: the first
        sensor.arm = m_arm->currentIndex() + 1;
    emit changed(sensor);
}

}  // namespace stillbay::ui
