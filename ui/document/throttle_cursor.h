// SPDX-License-Identifier: MIT
#pragma once

#include <QObject>

namespace stillbay::ui {

/// The throttle that is being looked at, shared by charts, picture and numbers. What is looked at
/// is no part of the craft: it is neither saved nor undone.
class ThrottleCursor final : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;

    double throttle() const { return m_throttle; }  ///< 0 to 1
    void moveTo(double throttle);                   ///< what lies outside 0 to 1 is drawn in

signals:
    void moved(double throttle);

private:
    double m_throttle = 0.5;
};

}  // namespace stillbay::ui
