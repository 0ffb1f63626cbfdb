-- Indexes for the notebook's search: words of everything that was written, and colours of readings.
-- Both follow from the other tables; triggers keep them up.

CREATE VIRTUAL TABLE notebook USING fts5(
    kind UNINDEXED,   -- trial, plan, recipe, run, material
    target UNINDEXED, -- slug or number of what the words belong to
    title,
    body,
    tokenize = 'unicode61 remove_diacritics 2',
    prefix = '1 2 3'
);

INSERT INTO notebook SELECT 'trial', slug, title, question || ' ' || method FROM trial;
INSERT INTO notebook SELECT 'trial', slug, title, arm.name || ' ' || treatment
    FROM arm JOIN trial ON trial.id = trial_id ORDER BY arm.id;
INSERT INTO notebook SELECT 'trial', slug, title, by_whom || ' ' || light || ' ' || remark
    FROM eye_grade JOIN piece ON piece.id = piece_id JOIN trial ON trial.id = trial_id ORDER BY eye_grade.id;
INSERT INTO notebook SELECT 'plan', slug, '', content
    FROM plan_revision JOIN plan ON plan.id = plan_id ORDER BY plan_revision.id;
INSERT INTO notebook SELECT 'recipe', slug, '', content
    FROM recipe_revision JOIN recipe ON recipe.id = recipe_id ORDER BY recipe_revision.id;
INSERT INTO notebook SELECT 'run', id, title, '' FROM run;
INSERT INTO notebook SELECT 'run', run_id, title, words
    FROM run_event JOIN run ON run.id = run_id WHERE words <> '' ORDER BY run_event.id;
INSERT INTO notebook SELECT 'material', id, name, kind || ' ' || notes FROM material;
INSERT INTO notebook SELECT 'material', material_id, name, supplier || ' ' || lot.notes
    FROM lot JOIN material ON material.id = material_id ORDER BY lot.id;

CREATE TRIGGER notebook_of_trial AFTER INSERT ON trial BEGIN
    INSERT INTO notebook VALUES ('trial', new.slug, new.title, new.question || ' ' || new.method);
END;
CREATE TRIGGER notebook_of_arm AFTER INSERT ON arm BEGIN
    INSERT INTO notebook SELECT 'trial', slug, title, new.name || ' ' || new.treatment
        FROM trial WHERE id = new.trial_id;
END;
CREATE TRIGGER notebook_of_eye_grade AFTER INSERT ON eye_grade BEGIN
    INSERT INTO notebook SELECT 'trial', slug, title, new.by_whom || ' ' || new.light || ' ' || new.remark
        FROM piece JOIN trial ON trial.id = trial_id WHERE piece.id = new.piece_id;
END;
CREATE TRIGGER notebook_of_plan AFTER INSERT ON plan_revision BEGIN
    INSERT INTO notebook SELECT 'plan', slug, '', new.content FROM plan WHERE id = new.plan_id;
END;
CREATE TRIGGER notebook_of_recipe AFTER INSERT ON recipe_revision BEGIN
    INSERT INTO notebook SELECT 'recipe', slug, '', new.content FROM recipe WHERE id = new.recipe_id;
END;
CREATE TRIGGER notebook_of_run AFTER INSERT ON run BEGIN
    INSERT INTO notebook VALUES ('run', new.id, new.title, '');
END;
CREATE TRIGGER notebook_of_run_event AFTER INSERT ON run_event WHEN new.words <> '' BEGIN
    INSERT INTO notebook SELECT 'run', id, title, new.words FROM run WHERE id = new.run_id;
END;
CREATE TRIGGER notebook_of_material AFTER INSERT ON material BEGIN
    INSERT INTO notebook VALUES ('material', new.id, new.name, new.kind || ' ' || new.notes);
END;
CREATE TRIGGER notebook_of_lot AFTER INSERT ON lot BEGIN
    INSERT INTO notebook SELECT 'material', id, name, new.supplier || ' ' || new.notes
        FROM material WHERE id = new.material_id;
END;

-- The number of a view, such as D65/10; views that no search asks for have none.
CREATE TABLE view_number (view TEXT PRIMARY KEY, number INTEGER NOT NULL UNIQUE) STRICT;
INSERT INTO view_number VALUES ('D65/10', 1), ('D65/2', 2), ('D50/2', 3), ('D50/10', 4),
    ('A/10', 5), ('FL2/10', 6), ('FL11/10', 7);

-- Colours as points of L*, a*, b* and the number of their view, in single precision.
CREATE VIRTUAL TABLE reading_colour USING rtree(
    id, low_l, high_l, low_a, high_a, low_b, high_b, low_view, high_view);
INSERT INTO reading_colour
    SELECT id, cielab_l, cielab_l, cielab_a, cielab_a, cielab_b, cielab_b, number, number
    FROM reading JOIN view_number USING (view);
CREATE TRIGGER reading_colour_of_reading AFTER INSERT ON reading BEGIN
    INSERT INTO reading_colour
        SELECT new.id, new.cielab_l, new.cielab_l, new.cielab_a, new.cielab_a,
            new.cielab_b, new.cielab_b, number, number
        FROM view_number WHERE view = new.view;
END;
