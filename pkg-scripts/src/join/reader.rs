//! Reads one module: what it imports and exports, and every place that the join changes.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use oxc_allocator::Allocator;
use oxc_ast::ast::*;
use oxc_ast_visit::{Visit, walk};
use oxc_parser::Parser;
use oxc_semantic::{Scoping, SemanticBuilder, SymbolId};
use oxc_span::{GetSpan, SourceType, Span};
use oxc_syntax::scope::ScopeFlags;

use super::APART;
use super::module::{Edit, Export, Module, Request, Statement as Kept, Wanted, With, failure};
use crate::failure::Outcome;

/// Reads a module. Only the first one asked for, the entry, may wait at its top level.
pub fn read(file: &str, text: &str, is_entry: bool) -> Outcome<Module> {
    let refuse = |at: usize, why: &str| Err(failure(file, text, at, why));
    if !is_plain(file) {
        return refuse(
            0,
            "a module's name is small letters, digits and hyphens, and ends in `.js`",
        );
    }
    let allocator = Allocator::default();
    let parsed = Parser::new(&allocator, text, SourceType::mjs()).parse();
    let program = parsed.program;
    let built = SemanticBuilder::new_compiler().build(&program);
    if let Some(error) = parsed.diagnostics.iter().chain(built.diagnostics.iter()).next() {
        let at = error.labels.first().map_or(0, |label| label.offset() as usize);
        return refuse(at, &format!("this is no JavaScript: {}", error.message));
    }
    let scoping = built.semantic.into_scoping();
    let mut reader = Reader::new(text, &scoping, is_entry);
    reader.visit_program(&program);
    match reader.refusals.into_iter().min() {
        Some((at, why)) => refuse(at, &why),
        None => Ok(Module {
            file: file.to_owned(),
            text: text.to_owned(),
            requests: [reader.requests, reader.late_requests].into_iter().flatten().collect(),
            wanted: reader.wanted,
            exports: reader.exports,
            statements: reader.statements,
            edits: in_order(reader.edits),
        }),
    }
}

/// Names made of these stay names when `-` becomes `_`, and no two become one.
fn is_plain(file: &str) -> bool {
    let name = file.strip_suffix(".js").unwrap_or_default();
    name.starts_with(|letter: char| letter.is_ascii_lowercase())
        && name.chars().all(|letter| matches!(letter, 'a'..='z' | '0'..='9' | '-'))
}

fn in_order(mut edits: Vec<Edit>) -> Vec<Edit> {
    edits.sort_by_key(|edit| edit.from);
    edits
}

/// What an import's local name stands for.
enum Meaning {
    Name { file: String, name: String },
    Namespace { file: String },
}

struct Reader<'s> {
    text: &'s str,
    scoping: &'s Scoping,
    is_entry: bool,
    meanings: HashMap<SymbolId, Meaning>,
    requests: Vec<Request>,
    late_requests: Vec<Request>,
    wanted: Vec<Wanted>,
    exports: BTreeMap<String, Export>,
    statements: Vec<Kept>,
    edits: Vec<Edit>,
    /// Where shorthands such as `{ one }` stand.
    shorthands: BTreeSet<u32>,
    /// The top-level names of the declaration in hand are exports.
    is_exporting: bool,
    functions_around: usize,
    classes_around: usize,
    refusals: Vec<(usize, String)>,
}

impl<'s> Reader<'s> {
    fn new(text: &'s str, scoping: &'s Scoping, is_entry: bool) -> Self {
        Self {
            text,
            scoping,
            is_entry,
            meanings: HashMap::new(),
            requests: vec![],
            late_requests: vec![],
            wanted: vec![],
            exports: BTreeMap::new(),
            statements: vec![],
            edits: vec![],
            shorthands: BTreeSet::new(),
            is_exporting: false,
            functions_around: 0,
            classes_around: 0,
            refusals: vec![],
        }
    }

    fn refuse(&mut self, span: Span, why: impl Into<String>) {
        self.refusals.push((start(span), why.into()));
    }

    fn edit(&mut self, span: Span, name: &str, with: With) {
        let key = self.shorthands.contains(&span.start).then(|| name.to_owned());
        self.edits.push(Edit { from: start(span), to: end(span), key, with });
    }

    /// Where a line's end closed a statement, its new neighbour may not: `written` then adds the `;`.
    fn keep(&mut self, span: Span, declaration: Option<&Declaration>) {
        use Declaration::{ClassDeclaration, FunctionDeclaration};
        let is_whole = matches!(declaration, Some(FunctionDeclaration(_) | ClassDeclaration(_)));
        let is_closed = is_whole || self.text[..end(span)].ends_with(';');
        self.statements.push(Kept { from: start(span), to: end(span), is_closed });
    }

    fn is_top_level(&self, symbol: SymbolId) -> bool {
        self.scoping.symbol_scope_id(symbol) == self.scoping.root_scope_id()
    }

    /// A joined name has one `$`, so a written one has none.
    fn check_name(&mut self, span: Span, name: &str) {
        if name.contains('$') {
            self.refuse(
                span,
                format!("the name `{name}` holds a `$`, which the join keeps for its own names"),
            );
        }
    }

    /// The file that an address names, when the join knows what to do with it.
    fn file_of(&mut self, source: &StringLiteral) -> Option<String> {
        let file = source.value.strip_prefix("./").filter(|file| is_plain(file));
        if file.is_none() {
            self.refuse(source.span, "only a module beside this one, `./name.js`, can be imported");
        }
        file.map(str::to_owned)
    }

    fn symbol_of(&self, reference: &IdentifierReference) -> Option<SymbolId> {
        self.scoping.get_reference(reference.reference_id()).symbol_id()
    }

    /// The module that a name such as the `core` of `core.load` stands for as a whole.
    fn namespace(&self, expression: &Expression) -> Option<String> {
        let Expression::Identifier(reference) = expression else { return None };
        match self.meanings.get(&self.symbol_of(reference)?)? {
            Meaning::Namespace { file } => Some(file.clone()),
            Meaning::Name { .. } => None,
        }
    }

    fn import(&mut self, import: &ImportDeclaration) {
        if import.phase.is_some() || import.with_clause.is_some() {
            self.refuse(import.span, "an import with a phase or attributes cannot be joined");
        }
        let Some(file) = self.file_of(&import.source) else { return };
        if APART.contains(&file.as_str()) {
            let why = format!("`{file}` stays a file of its own: import it by `await import(…)`");
            return self.refuse(import.span, why);
        }
        self.requests.push(Request { file: file.clone(), at: start(import.span), is_late: false });
        for specifier in import.specifiers.iter().flatten() {
            self.specifier(&file, specifier);
        }
    }

    fn specifier(&mut self, file: &str, specifier: &ImportDeclarationSpecifier) {
        let file = file.to_owned();
        self.check_name(specifier.local().span, &specifier.local().name);
        let meaning = match specifier {
            ImportDeclarationSpecifier::ImportSpecifier(one) => {
                let name = one.imported.name().to_string();
                let at = start(one.span);
                self.wanted.push(Wanted { file: file.clone(), name: name.clone(), at });
                Meaning::Name { file, name }
            }
            ImportDeclarationSpecifier::ImportNamespaceSpecifier(_) => Meaning::Namespace { file },
            ImportDeclarationSpecifier::ImportDefaultSpecifier(one) => {
                return self.refuse(one.span, "a default import cannot be joined: import a name");
            }
        };
        self.meanings.insert(specifier.local().symbol_id(), meaning);
    }

    /// `export { one, two as three };`
    fn export_list(&mut self, list: &ExportNamedDeclaration) {
        for specifier in &list.specifiers {
            let ModuleExportName::IdentifierReference(local) = &specifier.local else { continue };
            let ModuleExportName::IdentifierName(exported) = &specifier.exported else {
                self.refuse(specifier.span, "an export is named by a plain name");
                continue;
            };
            match self.symbol_of(local) {
                Some(symbol) if !self.scoping.symbol_flags(symbol).is_import() => {
                    self.export(&exported.name, symbol);
                }
                _ => self.refuse(specifier.span, "a re-export cannot be joined"),
            }
        }
    }

    fn export(&mut self, name: &str, symbol: SymbolId) {
        let local = self.scoping.symbol_name(symbol).to_owned();
        let changes = self.scoping.symbol_is_mutated(symbol);
        self.exports.insert(name.to_owned(), Export { local, changes });
    }

    /// A statement of the top level.
    fn statement(&mut self, statement: &Statement) {
        match statement {
            Statement::ImportDeclaration(import) => self.import(import),
            Statement::ExportNamedDeclaration(list) => self.export_list(list),
            Statement::ExportDeclaration(export) => {
                self.keep(export.declaration.span(), Some(&export.declaration));
                self.is_exporting = true;
                self.visit_declaration(&export.declaration);
                self.is_exporting = false;
            }
            Statement::ExportDefaultDeclaration(_) => {
                self.refuse(statement.span(), "a default export cannot be joined: export a name");
            }
            Statement::ExportAllDeclaration(_) | Statement::ExportFromDeclaration(_) => {
                self.refuse(statement.span(), "a re-export cannot be joined");
            }
            _ => {
                self.keep(statement.span(), statement.as_declaration());
                self.visit_statement(statement);
            }
        }
    }

    fn late_import(&mut self, import: &ImportExpression) {
        let Expression::StringLiteral(source) = &import.source else {
            return self.refuse(import.span, "a late import names its module by plain text");
        };
        if import.phase.is_some() || import.options.is_some() {
            return self
                .refuse(import.span, "an import with a phase or attributes cannot be joined");
        }
        let Some(file) = self.file_of(source) else { return };
        if APART.contains(&file.as_str()) {
            return;
        }
        if self.scoping.symbol_names().any(|name| name == "Promise") {
            self.refuse(import.span, "beside a late import, nothing may be named `Promise`");
        }
        self.late_requests.push(Request {
            file: file.clone(),
            at: start(import.span),
            is_late: true,
        });
        self.edit(import.span, "", With::Everything { file });
    }

    fn wait(&mut self, span: Span) {
        if self.functions_around == 0 && !self.is_entry {
            self.refuse(span, "only the first module may wait at its top level");
        }
    }
}

impl<'a> Visit<'a> for Reader<'_> {
    fn visit_program(&mut self, program: &Program<'a>) {
        // An import may stand below its uses.
        let is_import = |each: &&Statement| matches!(each, Statement::ImportDeclaration(_));
        program.body.iter().filter(is_import).for_each(|import| self.statement(import));
        program.body.iter().filter(|each| !is_import(each)).for_each(|each| self.statement(each));
    }

    fn visit_binding_identifier(&mut self, name: &BindingIdentifier<'a>) {
        self.check_name(name.span, &name.name);
        if self.is_top_level(name.symbol_id()) {
            self.edit(name.span, &name.name, With::Own(name.name.to_string()));
            if self.is_exporting {
                self.export(&name.name, name.symbol_id());
            }
        }
    }

    fn visit_identifier_reference(&mut self, reference: &IdentifierReference<'a>) {
        let (span, name) = (reference.span, reference.name.as_str());
        self.check_name(span, name);
        let Some(symbol) = self.symbol_of(reference) else {
            if name == "eval" {
                self.refuse(span, "`eval` sees names that the join changes");
            }
            return;
        };
        match self.meanings.get(&symbol) {
            Some(Meaning::Namespace { .. }) => {
                self.refuse(
                    span,
                    format!("of `{name}`, only uses such as `{name}.word` can be joined"),
                );
            }
            Some(Meaning::Name { .. })
                if self.scoping.get_reference(reference.reference_id()).is_write() =>
            {
                self.refuse(
                    span,
                    format!("`{name}` is imported, so nothing can be assigned to it"),
                );
            }
            Some(Meaning::Name { file, name: exported }) => {
                let with = With::Imported { file: file.clone(), name: exported.clone() };
                self.edit(span, name, with);
            }
            None if self.is_top_level(symbol) => self.edit(span, name, With::Own(name.to_owned())),
            None => {}
        }
    }

    fn visit_static_member_expression(&mut self, member: &StaticMemberExpression<'a>) {
        let Some(file) = self.namespace(&member.object) else {
            return walk::walk_static_member_expression(self, member);
        };
        let Expression::Identifier(object) = &member.object else { return };
        let name = member.property.name.to_string();
        let flags = self.scoping.get_reference(object.reference_id()).flags();
        if member.optional || flags.is_member_write_target() {
            let why = format!("of `{}`, only plain uses of its names can be joined", object.name);
            return self.refuse(member.span, why);
        }
        self.edit(member.span, "", With::Imported { file, name });
    }

    fn visit_object_property(&mut self, property: &ObjectProperty<'a>) {
        if property.shorthand {
            self.shorthands.insert(property.span.start);
            return self.visit_expression(&property.value);
        }
        walk::walk_object_property(self, property);
    }

    fn visit_binding_property(&mut self, property: &BindingProperty<'a>) {
        if property.shorthand {
            self.shorthands.insert(property.span.start);
        }
        walk::walk_binding_property(self, property);
    }

    fn visit_assignment_target_property_identifier(
        &mut self,
        target: &AssignmentTargetPropertyIdentifier<'a>,
    ) {
        self.shorthands.insert(target.span.start);
        walk::walk_assignment_target_property_identifier(self, target);
    }

    fn visit_import_expression(&mut self, import: &ImportExpression<'a>) {
        self.late_import(import);
    }

    fn visit_await_expression(&mut self, await_: &AwaitExpression<'a>) {
        self.wait(await_.span);
        walk::walk_await_expression(self, await_);
    }

    /// What it holds is let go at the end of its module, and joined modules end together.
    fn visit_variable_declaration(&mut self, declaration: &VariableDeclaration<'a>) {
        if declaration.kind.is_using() && self.functions_around == 0 {
            self.refuse(declaration.span, "`using` can be joined inside a function only");
        }
        walk::walk_variable_declaration(self, declaration);
    }

    fn visit_for_of_statement(&mut self, for_: &ForOfStatement<'a>) {
        if for_.r#await {
            self.wait(for_.span);
        }
        walk::walk_for_of_statement(self, for_);
    }

    /// A function called as `core.load()` would see its module as `this`, and no more once joined.
    fn visit_this_expression(&mut self, this: &ThisExpression) {
        if self.classes_around == 0 {
            self.refuse(this.span, "`this` can be joined inside a class only");
        }
    }

    fn visit_class_body(&mut self, body: &ClassBody<'a>) {
        self.classes_around += 1;
        walk::walk_class_body(self, body);
        self.classes_around -= 1;
    }

    fn visit_function(&mut self, function: &Function<'a>, flags: ScopeFlags) {
        self.functions_around += 1;
        walk::walk_function(self, function, flags);
        self.functions_around -= 1;
    }

    fn visit_arrow_function_expression(&mut self, arrow: &ArrowFunctionExpression<'a>) {
        self.functions_around += 1;
        walk::walk_arrow_function_expression(self, arrow);
        self.functions_around -= 1;
    }
}

fn start(span: Span) -> usize {
    span.start as usize
}

fn end(span: Span) -> usize {
    span.end as usize
}
