// SPDX-License-Identifier: MIT
#pragma once

#include <QWidget>

#include <vector>

class QToolButton;

namespace stillbay::ui {

class TuneChip;
class TunesModel;

/// The kept tunes in one line: as many chips as there is room for, and how many more there are.
class TunesStrip final : public QWidget {
    Q_OBJECT
public:
    explicit TunesStrip(const TunesModel& model, QWidget* parent = nullptr);

    const std::vector<TuneChip*>& chips() const { return m_chips; }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void opened(int row);

protected:
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void refresh();
    void place();

    const TunesModel& m_model;
    std::vector<TuneChip*> m_chips;  // of the first tunes
    QToolButton* m_more;
};

}  // namespace stillbay::ui
