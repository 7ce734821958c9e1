// SPDX-License-Identifier: MIT
#pragma once

#include "core/assess/assessment.h"
#include "core/setup/setup.h"
#include "ui/widgets/paced.h"

#include <QWidget>

#include <optional>

class QAbstractButton;
class QCheckBox;
class QHBoxLayout;
class QLabel;
class QToolButton;

namespace stillbay::ui {

class FilmedPicture;
class ThrottleCursor;

/// A test scene as the craft's camera would film it at the throttle that is looked at.
class FilmedPanel final : public QWidget {
    Q_OBJECT
public:
    explicit FilmedPanel(ThrottleCursor& cursor, QWidget* parent = nullptr);

    void setAssessment(const Setup& setup, const Assessment& assessment);
    void setStale(bool stale);

    FilmedPicture& picture() { return *m_picture; }
    QString text() const;  ///< the line below the picture

private:
    QHBoxLayout* makeHeading();
    QHBoxLayout* makeControls();
    void showPoint();
    void writeCaption();
    void showPlaying(bool on);

    ThrottleCursor& m_cursor;
    FilmedPicture* m_picture;
    QToolButton* m_play;
    QCheckBox* m_slow;
    QCheckBox* m_split;
    QLabel* m_caption;
    QString m_text, m_beat;  // the newest, of the caption
    Paced m_words;
    std::optional<Setup> m_setup;  // of m_assessment
    Assessment m_assessment;
};

}  // namespace stillbay::ui
