// SPDX-License-Identifier: MIT
#pragma once

#include "ui/recordings/of_what.h"

#include <QWidget>

#include <optional>

class QPushButton;

namespace stillbay::ui {

class NumberBox;

/// Which part of a recording is used, as numbers.
class PartRow final : public QWidget {
    Q_OBJECT
public:
    explicit PartRow(OfWhat what, QWidget* parent = nullptr);

    /// @param end_s   of the recording; 0: it is not known, and no part can be chosen
    /// @param tick_s  nearer to an end than this is that end
    void setLength(double end_s, double tick_s);
    /// [s] since the beginning; none: from there, or up to there
    void setPart(std::optional<double> from_s, std::optional<double> to_s);
    void want(double from_s, double to_s);  ///< tells it: the whole, where it reaches both ends

signals:
    void partWanted(std::optional<double> from_s, std::optional<double> to_s);

private:
    void showPart();

    std::optional<double> m_from_s, m_to_s;
    double m_end_s = 0.0, m_tick_s = 0.0;
    NumberBox* m_from;
    NumberBox* m_to;
    QPushButton* m_whole;
};

}  // namespace stillbay::ui
