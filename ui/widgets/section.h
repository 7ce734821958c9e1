// SPDX-License-Identifier: MIT
#pragma once

#include <QWidget>

class QToolButton;
class QVBoxLayout;

namespace stillbay::ui {

class ElidedLabel;

/// A heading that folds what is below it away; folded, a short summary stands beside it.
class Section final : public QWidget {
    Q_OBJECT
public:
    explicit Section(const QString& title, QWidget* parent = nullptr);

    void add(QWidget* widget, Qt::Alignment alignment = {});
    void setSummary(const QString& summary);
    QString summary() const;
    void setOpen(bool open);
    bool isOpen() const;
    void rememberAs(const QString& name);  ///< whether it is open, from one run to the next

signals:
    void toggled(bool open);

private:
    QToolButton* m_heading;
    ElidedLabel* m_summary;
    QWidget* m_body;
    QVBoxLayout* m_bodyLayout;
};

}  // namespace stillbay::ui
