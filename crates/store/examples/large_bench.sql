-- A bench of 10,000 trials and 1,000,000 readings: two arms of five pieces at ten stages in each,
-- each arm of a colour of its own,
-- fading, with some scatter that is the same each time.
WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 10000)
INSERT INTO trial SELECT i, 'trial-' || i, 'Trial ' || i, 'Which?', 1, 9, 0, '', 'now' FROM n;
WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 19999)
INSERT INTO arm SELECT i + 1, i / 2 + 1, 'arm ' || i, '' FROM n;
WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 99999)
INSERT INTO piece SELECT i + 1, i / 10 + 1, i / 5 + 1, 'P' || i, 'test', NULL, NULL FROM n;
WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i < 99999)
INSERT INTO photo SELECT i + 1, i / 10 + 1, i % 10, 'p.jpg', printf('%064d', i), 1, 9, 9, NULL, 'now', NULL FROM n;
INSERT INTO marking SELECT id, id, 'now' FROM photo;
INSERT INTO outcome SELECT id, 'model', 1, NULL, NULL, '[]', 'now' FROM marking;
INSERT INTO area SELECT photo.id, piece.id, piece.id, '[[1,1],[9,1],[9,9],[1,9]]'
    FROM photo JOIN piece USING (trial_id);
INSERT INTO reading SELECT NULL, piece.id, photo.id, stage,
    30 + arm_id * 37 % 400 / 10.0 + 0.5 * stage * (1 + arm_id % 2) + (piece.id * 7919 + photo.id * 104729) % 97 / 97.0,
    arm_id * 53 % 900 / 10.0 - 40 - 0.3 * stage + (piece.id * 6101 + photo.id * 7907) % 89 / 89.0,
    arm_id * 71 % 900 / 10.0 - 40,
    '[[1,0,0],[0,1,0],[0,0,1]]', 1000, 'D65/10', 'photo', '[]', 'now'
    FROM photo JOIN piece USING (trial_id);
