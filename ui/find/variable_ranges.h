// SPDX-License-Identifier: MIT
#pragma once

#include "core/design/design.h"

#include <QWidget>

#include <array>
#include <vector>

class QCheckBox;
class QGridLayout;
class QLabel;

namespace stillbay::ui {

class NumberBox;

/// What a search may set, and how far: a tick for each variable, and two numbers for each that is
/// ticked. The ticks are remembered.
class VariableRanges final : public QWidget {
    Q_OBJECT
public:
    explicit VariableRanges(QWidget* parent = nullptr);

    void setUsual(const Setup& setup);  ///< another craft: its usual ranges
    void follow(const Mounts& mounts);  ///< the same craft, which may be drilled by now

    /// Takes what is still being typed. @return false: it was refused, and the builder has to read
    /// why.
    bool takeTyping();
    std::vector<VariableRange> chosen() const;
    bool keepsLevel() const;  ///< every design is hung level, which decides the elevation
    QString fault() const;    ///< a range that does not rise; empty: none

signals:
    void changed();
    void usualWanted();
    void refused(const QString& why);

private:
    struct Row {
        Variable variable = Variable::FreeLength;
        QCheckBox* tick = nullptr;
        NumberBox* from = nullptr;
        NumberBox* to = nullptr;
        QLabel* between = nullptr;
    };
    Row makeRow(Variable variable, const QString& meaning);
    NumberBox* makeBox(Variable variable, const QString& name);
    void place(QGridLayout& grid, int row);
    void showFree(const Row& row);
    bool isFree(Variable variable) const;
    QCheckBox* makeLevel();
    static VariableRange rangeOf(const Row& row);

    bool m_isDrilled = false;
    bool m_hasRefused = false;  // an entry, and nothing was entered since
    QCheckBox* m_level;
    std::vector<Row> m_rows;
    QLabel* m_drilled;
};

}  // namespace stillbay::ui
