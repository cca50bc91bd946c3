//! Small modules and the exact text that they become.

use super::*;

fn joined(modules: &[(&str, &str)]) -> Outcome<Joined> {
    Ok(both(modules)?.0)
}

/// The first file and the one that is imported late.
fn both(modules: &[(&str, &str)]) -> Outcome<(Joined, Joined)> {
    let texts = modules.iter().map(|(file, text)| ((*file).to_owned(), (*text).to_owned()));
    join(&texts.collect(), Entry { file: "main.js", late: "more.js" })
}

#[track_caller]
fn check(modules: &[(&str, &str)], expected: &str) {
    assert_eq!(joined(modules).unwrap().text, expected);
}

#[track_caller]
fn refuses(modules: &[(&str, &str)], why: &str) {
    assert_eq!(joined(modules).unwrap_err().to_string(), why);
}

/// A refusal of something in the first module, beside a module `a.js` that exports `one`.
#[track_caller]
fn refuses_main(text: &str, why: &str) {
    refuses(&[("main.js", text), ("a.js", "export const one = 1;")], why);
}

#[test]
fn puts_the_module_before_its_names_and_drops_the_imports() {
    check(
        &[
            (
                "main.js",
                "// @ts-check\nimport { one } from \"./glass-line.js\";\n\nconst two = one + 1;\nsay(two);\n",
            ),
            ("glass-line.js", "/** One. */\nexport const one = 1;\n"),
        ],
        "// glass-line.js\nconst glass_line$one = 1;\n\
         // main.js\nconst main$two = glass_line$one + 1;\nsay(main$two);\n",
    );
}

#[test]
fn gives_every_kind_of_declaration_its_new_name() {
    check(
        &[(
            "main.js",
            "let a;\nvar b = a;\nfunction c() { return c; }\nasync function d() {}\nclass E extends Base {}\n\
             const { f, g: [h], ...i } = new E(), j = () => h;\nif (i) { var k = j; }\n",
        )],
        "// main.js\nlet main$a;\nvar main$b = main$a;\nfunction main$c() { return main$c; }\n\
         async function main$d() {}\nclass main$E extends Base {}\n\
         const { f: main$f, g: [main$h], ...main$i } = new main$E(), main$j = () => main$h;\n\
         if (main$i) { var main$k = main$j; };\n",
    );
}

#[test]
fn keeps_the_same_name_in_two_modules_apart() {
    check(
        &[
            ("main.js", "import { same as other } from \"./a.js\";\nconst same = other;\n"),
            ("a.js", "const hidden = 1;\nexport const same = hidden;\n"),
        ],
        "// a.js\nconst a$hidden = 1;\nconst a$same = a$hidden;\n// main.js\nconst main$same = a$same;\n",
    );
}

#[test]
fn leaves_inner_names_keys_and_globals_alone() {
    check(
        &[
            (
                "main.js",
                "import { one } from \"./a.js\";\nconst two = 2;\n\
                 const f = (one, { two }) => one + two;\n\
                 function g() { const one = 3; { let two = one; return { two, one: 4 }; } }\n\
                 for (const one of [two]) console.log(one, window.one, this_.two);\n\
                 one: for (;;) break one;\n",
            ),
            ("a.js", "export const one = 1;\nexport const console = 2;\n"),
        ],
        "// a.js\nconst a$one = 1;\nconst a$console = 2;\n\
         // main.js\nconst main$two = 2;\n\
         const main$f = (one, { two }) => one + two;\n\
         function main$g() { const one = 3; { let two = one; return { two, one: 4 }; } }\n\
         for (const one of [main$two]) console.log(one, window.one, this_.two);\n\
         one: for (;;) break one;\n",
    );
}

#[test]
fn says_the_key_of_a_shorthand() {
    check(
        &[
            (
                "main.js",
                "import { one as first } from \"./a.js\";\nlet two;\n\
                 say({ first, two, two: two, three() {} });\n\
                 ({ two } = given);\n({ two = first, other: two } = given);\n\
                 const { three = two } = given;\n",
            ),
            ("a.js", "export const one = 1;\n"),
        ],
        "// a.js\nconst a$one = 1;\n// main.js\nlet main$two;\n\
         say({ first: a$one, two: main$two, two: main$two, three() {} });\n\
         ({ two: main$two } = given);\n({ two: main$two = a$one, other: main$two } = given);\n\
         const { three: main$three = main$two } = given;\n",
    );
}

#[test]
fn names_what_a_namespace_names() {
    check(
        &[
            ("main.js", "import * as a from \"./a.js\";\na.load(a.one)?.then(a.two.three);\n"),
            (
                "a.js",
                "export let one = 1;\nexport function load() { one += 1; }\nconst hidden = 2;\nexport { hidden as two };\n",
            ),
        ],
        "// a.js\nlet a$one = 1;\nfunction a$load() { a$one += 1; }\nconst a$hidden = 2;\n\
         // main.js\na$load(a$one)?.then(a$hidden.three);\n",
    );
}

#[test]
fn puts_what_is_imported_late_into_a_second_file() {
    let (first, late) = both(&[
        (
            "main.js",
            "import { one } from \"./a.js\";\nlet two = one;\n\
             const open = async () => (await import(\"./mat.js\")).openMat(1);\n\
             const { load } = await import(\"./farthing.js\");\n",
        ),
        (
            "mat.js",
            "import { one, three } from \"./a.js\";\nimport { deep } from \"./b.js\";\n\
             const mat = one;\nexport { mat as shown };\nexport function openMat() { deep(three); }\n",
        ),
        ("a.js", "export const one = 1;\nexport let three = 3;\nthree += one;\n"),
        ("b.js", "import * as a from \"./a.js\";\nexport const deep = () => a.one;\n"),
    ])
    .unwrap();
    assert_eq!(
        first.text,
        "// a.js\nconst a$one = 1;\nlet a$three = 3;\na$three += a$one;\n\
         // main.js\nlet main$two = a$one;\n\
         const main$open = async () => (await import(\"./more.js\")\
         .then(({ mat$openMat, mat$mat }) => ({ openMat: mat$openMat, shown: mat$mat }))).openMat(1);\n\
         const { load: main$load } = await import(\"./farthing.js\");\n\
         export { a$one, a$three };\n"
    );
    assert_eq!(
        late.text,
        "import { a$one, a$three } from \"./main.js\";\n\
         // b.js\nconst b$deep = () => a$one;\n\
         // mat.js\nconst mat$mat = a$one;\nfunction mat$openMat() { b$deep(a$three); }\n\
         export { mat$mat, mat$openMat };\n"
    );
    assert_eq!(
        (first.files, late.files),
        (files(&["a.js", "main.js"]), files(&["b.js", "mat.js"]))
    );
}

#[test]
fn puts_everything_into_one_file() {
    let modules = [
        (
            "main.js",
            "import { one } from \"./a.js\";\nconst later = async () => (await import(\"./b.js\")).two + one;\n",
        ),
        ("a.js", "export const one = 1;\n"),
        ("b.js", "import { one } from \"./a.js\";\nexport const two = one + 1;\n"),
    ];
    let texts = modules.iter().map(|(file, text)| ((*file).to_owned(), (*text).to_owned()));
    let whole = join_whole(&texts.collect(), "main.js").unwrap();
    assert_eq!(
        whole.text,
        "// a.js\nconst a$one = 1;\n\
         // b.js\nconst b$two = a$one + 1;\n\
         // main.js\nconst main$later = async () => (await Promise.resolve({ two: b$two })).two + a$one;\n",
    );
    assert_eq!(whole.files, files(&["a.js", "b.js", "main.js"]));
}

fn files(files: &[&str]) -> Vec<String> {
    files.iter().map(|file| (*file).to_owned()).collect()
}

#[test]
fn gives_a_late_import_of_what_runs_already_as_a_promise() {
    check(
        &[
            ("main.js", "import \"./a.js\";\nconst late = () => import(\"./a.js\");\n"),
            ("a.js", "export const one = 1;\n"),
        ],
        "// a.js\nconst a$one = 1;\n\
         // main.js\nconst main$late = () => Promise.resolve({ one: a$one });\n",
    );
}

#[test]
fn orders_modules_by_their_imports_each_once() {
    let modules = [
        ("main.js", "const late = import(\"./c.js\");\nimport \"./a.js\";\nimport \"./b.js\";\n"),
        ("a.js", "import \"./b.js\";\na();\n"),
        ("b.js", "b();\n"),
        ("c.js", "import \"./a.js\";\nc();\n"),
        ("apart.js", "apart();\n"),
    ];
    let (first, late) = both(&modules).unwrap();
    assert_eq!((first.files, late.files), (files(&["b.js", "a.js", "main.js"]), files(&["c.js"])));
}

#[test]
fn closes_a_statement_that_only_a_line_end_closed() {
    check(
        &[
            ("main.js", "const two = 2\nimport { one } from \"./a.js\"\n(one)\n"),
            ("a.js", "export const one = () => {}\n"),
        ],
        "// a.js\nconst a$one = () => {};\n// main.js\nconst main$two = 2;\n(a$one);\n",
    );
}

#[test]
fn refuses_imports_that_it_cannot_follow() {
    refuses_main(
        "import one from \"./a.js\";",
        "www/main.js:1: a default import cannot be joined: import a name.",
    );
    refuses_main("\nimport { two } from \"./a.js\";", "www/main.js:2: `a.js` exports no `two`.");
    refuses_main(
        "import * as a from \"./a.js\";\na.two();",
        "www/main.js:2: `a.js` exports no `two`.",
    );
    refuses_main("\n\nimport \"./b.js\";", "www/main.js:3: there is no www/b.js.");
    let beside = "only a module beside this one, `./name.js`, can be imported";
    for address in
        ["a", "/a.js", "../a.js", "./b/a.js", "./A.js", "./a_b.js", "https://a.example/a.js"]
    {
        refuses_main(&format!("import \"{address}\";"), &format!("www/main.js:1: {beside}."));
    }
    refuses_main(
        "import one from \"./a.js\" with { type: \"json\" };",
        "www/main.js:1: an import with a phase or attributes cannot be joined.",
    );
    refuses_main(
        "import { load } from \"./farthing.js\";",
        "www/main.js:1: `farthing.js` stays a file of its own: import it by `await import(…)`.",
    );
}

#[test]
fn refuses_late_imports_that_it_cannot_follow() {
    refuses_main(
        "import(`./${name}.js`);",
        "www/main.js:1: a late import names its module by plain text.",
    );
    refuses_main(
        "import(\"./a.js\", { with: {} });",
        "www/main.js:1: an import with a phase or attributes cannot be joined.",
    );
    refuses_main(
        "const f = (Promise) => import(\"./a.js\");",
        "www/main.js:1: beside a late import, nothing may be named `Promise`.",
    );
    refuses(
        &[("main.js", "\nimport(\"./a.js\");"), ("a.js", "export let one = 1;\none = 2;")],
        "www/main.js:2: `a.js` changes its export `one`: import it by `import { … }`.",
    );
}

#[test]
fn refuses_exports_that_it_cannot_name() {
    refuses_main(
        "export default 1;",
        "www/main.js:1: a default export cannot be joined: export a name.",
    );
    for export in ["export * from \"./a.js\";", "export { one } from \"./a.js\";"] {
        refuses_main(export, "www/main.js:1: a re-export cannot be joined.");
    }
    refuses_main(
        "import { one } from \"./a.js\";\nexport { one };",
        "www/main.js:2: a re-export cannot be joined.",
    );
    refuses_main(
        "const one = 1;\nexport { one as \"1\" };",
        "www/main.js:2: an export is named by a plain name.",
    );
}

#[test]
fn refuses_a_namespace_used_as_a_value() {
    let only = "www/main.js:2: of `a`, only uses such as `a.word` can be joined.";
    for text in ["say(a);", "a[\"one\"];", "const { one } = a;", "say({ a });", "(a).one;"] {
        refuses_main(&format!("import * as a from \"./a.js\";\n{text}"), only);
    }
    let plain = "www/main.js:2: of `a`, only plain uses of its names can be joined.";
    for text in
        ["a.one = 2;", "a.one += 2;", "a?.one;", "delete a.one;", "[a.one] = [2];", "a.one++;"]
    {
        refuses_main(&format!("import * as a from \"./a.js\";\n{text}"), plain);
    }
}

#[test]
fn refuses_to_assign_to_an_import() {
    for text in ["one = 2;", "one++;", "({ one } = {});", "for (one of []);", "[one] = [2];"] {
        refuses_main(
            &format!("import {{ one }} from \"./a.js\";\n{text}"),
            "www/main.js:2: `one` is imported, so nothing can be assigned to it.",
        );
    }
}

#[test]
fn refuses_circles() {
    let circle = [
        ("main.js", "import \"./a.js\";"),
        ("a.js", "\nimport \"./b.js\";"),
        ("b.js", "const late = () => import(\"./a.js\");"),
    ];
    refuses(&circle, "www/b.js:1: importing `a.js` here closes a circle.");
    refuses_main(
        "import \"./main.js\";",
        "www/main.js:1: importing `main.js` here closes a circle.",
    );
}

#[test]
fn refuses_to_wait_at_the_top_of_any_module_but_the_first() {
    let why = "www/a.js:1: only the first module may wait at its top level.";
    for text in ["await 1;", "for await (const each of []);", "export const b = [await 1];"] {
        refuses(&[("main.js", "import \"./a.js\";"), ("a.js", text)], why);
    }
    let inner = "const f = async () => { for await (const each of []) await each; };\n";
    check(
        &[("main.js", "import \"./a.js\";\nawait 1;\n"), ("a.js", inner)],
        "// a.js\nconst a$f = async () => { for await (const each of []) await each; };\n\
         // main.js\nawait 1;\n",
    );
}

#[test]
fn refuses_names_that_could_become_another() {
    let why = "which the join keeps for its own names";
    for (text, name) in [("say(a$one);", "a$one"), ("const $ = 1;", "$"), ("(a$) => 1;", "a$")] {
        refuses_main(text, &format!("www/main.js:1: the name `{name}` holds a `$`, {why}."));
    }
    refuses_main("eval(\"one\");", "www/main.js:1: `eval` sees names that the join changes.");
}

#[test]
fn refuses_to_hold_something_until_the_end_of_a_module() {
    for text in ["using one = two();", "await using one = two();"] {
        refuses_main(text, "www/main.js:1: `using` can be joined inside a function only.");
    }
}

#[test]
fn refuses_this_outside_a_class() {
    refuses_main(
        "function f() { return this; }",
        "www/main.js:1: `this` can be joined inside a class only.",
    );
    check(
        &[("main.js", "class A { b() { return this; } }\n")],
        "// main.js\nclass main$A { b() { return this; } }\n",
    );
}

#[test]
fn refuses_what_is_no_javascript() {
    let failure = joined(&[("main.js", "\nconst = 1;")]).unwrap_err().to_string();
    assert!(failure.starts_with("www/main.js:2: this is no JavaScript: "), "{failure}");
    let twice = joined(&[("main.js", "\nlet one;\nlet one;")]).unwrap_err().to_string();
    assert!(twice.starts_with("www/main.js:2: this is no JavaScript: "), "{twice}");
    assert_eq!(joined(&[]).unwrap_err().to_string(), "There is no www/main.js.");
    let taken = [("main.js", "import \"./more.js\";"), ("more.js", "")];
    refuses(&taken, "www/more.js: the build writes a file of this name.");
}
